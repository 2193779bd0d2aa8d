// Makes elements, so that no text is ever parsed as markup.

const SVG = "http://www.w3.org/2000/svg";

/** An HTML element; `on…` attributes are listeners, those that are null or false are left out. */
export function h(tag, attributes, ...children) {
  return furnish(document.createElement(tag), attributes, children);
}

/** An SVG element. */
export function svg(tag, attributes, ...children) {
  return furnish(document.createElementNS(SVG, tag), attributes, children);
}

function furnish(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== null && value !== undefined && value !== false) element.setAttribute(name, value);
  }
  element.append(
    ...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false),
  );
  return element;
}
