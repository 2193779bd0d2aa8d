// What everyone needs of a page as it stands, in shadow trees too.

import { readFileSync } from "node:fs";
import { join } from "node:path";

import { packages } from "./setting.js";

const axe = readFileSync(join(packages, "node_modules/axe-core/axe.min.js"), "utf8");

/** What axe finds wrong. Without preloading, which would write styles that the policy forbids into shadow trees. */
export async function faults(page) {
  // Injected past the page's own content security policy, as the browser's tools are.
  const { violations } = await page.evaluate(
    `(() => { ${axe}; return axe.run(document, { resultTypes: ["violations"], preload: false }); })()`,
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} ${target}: ${failureSummary}`),
  );
}

/** How far the page is wider than the screen, if it is. */
export const tooWide = async (page) => {
  const { wide, screen } = await page.evaluate(() => ({
    wide: document.documentElement.scrollWidth,
    screen: innerWidth,
  }));
  return wide <= screen ? [] : [`${wide} px on a screen of ${screen}`];
};

/** Numbers at the upright axis of a picture that lie across its name, or nearer than two pixels. */
export const crossing = (page) =>
  page.locator("figure svg text[transform]").evaluateAll((names) =>
    names.flatMap((name) => {
      const own = name.getBoundingClientRect();
      const isNear = ({ left, right, top, bottom }) =>
        left < own.right + 2 && own.left < right && top < own.bottom && own.top < bottom;
      return [...name.parentElement.querySelectorAll("text[text-anchor=end]:not([class])")]
        .filter((number) => isNear(number.getBoundingClientRect()))
        .map((number) => `${number.textContent} and ${name.textContent}`);
    }),
  );

/** Choices whose longest text is cut off by their box. */
export const cutOff = (page) =>
  page.locator("select").evaluateAll((choices) =>
    choices
      .filter((choice) => choice.checkVisibility())
      .flatMap((choice) => {
        const wanted = choice.cloneNode(true);
        Object.assign(wanted.style, { position: "absolute", width: "max-content" });
        choice.after(wanted);
        const [has, wants] = [choice, wanted].map((one) => Math.floor(one.getBoundingClientRect().width));
        wanted.remove();
        return wants > has ? [`${choice.id}: ${has} px for ${wants}`] : [];
      }),
  );

/** Controls too small for a wet finger: narrower than 44 pixels or lower than `least`. */
export const tooSmall = async (page, least = 44) => {
  const controls = page.locator("button, select, input, summary, nav a");
  const sizes = await controls.evaluateAll((all) =>
    all
      .filter((control) => control.checkVisibility())
      .map((control) => {
        // A box that belongs to a label is pressed by its label too.
        const area = (control.type === "checkbox" && control.closest("label")) || control;
        const { width, height } = area.getBoundingClientRect();
        return { name: control.outerHTML.slice(0, 60), width, height };
      }),
  );
  if (sizes.length === 0) throw new Error("no control found");
  return sizes.filter(({ width, height }) => width < 44 || height < least);
};
