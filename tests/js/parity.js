// Every case through the face, each number compared with the core's to the last bit. The same code runs
// in Node.js and in a browser.

const buffer = new DataView(new ArrayBuffer(8));

/** Numbers of the texts of their bits, wherever they stand. */
export function numbers(value) {
  if (typeof value === "string" && /^[0-9a-f]{16}$/.test(value)) {
    buffer.setBigUint64(0, BigInt(`0x${value}`));
    return buffer.getFloat64(0);
  }
  if (Array.isArray(value)) return value.map(numbers);
  if (typeof value === "object" && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, numbers(inner)]));
  }
  return value;
}

function bits(number) {
  buffer.setFloat64(0, number);
  return buffer.getBigUint64(0);
}

/** Whether two values are the same: numbers to the last bit, any not-a-number like any other. */
function same(a, b) {
  if (typeof a === "number" && typeof b === "number") {
    return Number.isNaN(a) ? Number.isNaN(b) : bits(a) === bits(b);
  }
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.length === b.length && a.every((inner, at) => same(inner, b[at]));
  }
  if (typeof a === "object" && a !== null && typeof b === "object" && b !== null) {
    const keys = Object.keys(a);
    return keys.length === Object.keys(b).length && keys.every((key) => key in b && same(a[key], b[key]));
  }
  return a === b;
}

const FACTS = ["code", "field", "value", "min", "max", "quantity", "nearest", "limit", "beside", "why"];

/** The facts of what was thrown, as a case lists them. */
function facts(thrown, Refusal) {
  if (!(thrown instanceof Refusal) || !(thrown instanceof RangeError)) throw thrown;
  return Object.fromEntries(FACTS.map((name) => [name, thrown[name]]));
}

/** What a refusal says, without the item of a list, which the core does not tell. It must have the value refused. */
function withoutItem({ item, message, value }, options) {
  if (item === null) return message;
  const [name, list] = Object.entries(options).find(([, given]) => Array.isArray(given)) ?? [];
  const isMeant = name !== undefined && [list[item]].flatMap((one) => Object.values(Object(one)).concat(one)).includes(value);
  const place = `${name}[${item}]: `;
  return isMeant && message.startsWith(place) ? message.slice(place.length) : `of another item: ${message}`;
}

/** Checks cases, one JSON text a line; what is wrong, at most twenty of it, and how many there were. */
export function check(library, lines) {
  const wrong = [];
  const met = new Set();
  let count = 0;
  for (const line of lines.split("\n")) {
    if (line === "" || wrong.length >= 20) continue;
    count += 1;
    const { room, name, options, answer, refusal } = JSON.parse(line);
    let got, expected, words;
    try {
      got = library[room][name](numbers(options));
      expected = answer === undefined ? "a refusal" : numbers(answer);
      met.add(`${room}.${name}`);
    } catch (thrown) {
      got = facts(thrown, library.Refusal);
      words = withoutItem(thrown, numbers(options));
      const { message, ...listed } = refusal ?? { message: "no refusal" };
      expected = { ...Object.fromEntries(FACTS.map((fact) => [fact, null])), ...numbers(listed) };
      // The core writes very large and very small numbers out in full.
      const plain = !/[0-9]e[+-][0-9]|Infinity/.test(words) && !/inf|NaN|: -0 /.test(message);
      if (plain && words !== message) wrong.push(`${line}\n  says ${words}`);
    }
    if (!same(got, expected)) wrong.push(`${line}\n  got ${JSON.stringify(got)}`);
  }
  // Columns and a profile answer no formula, nor does what is seen live.
  const { columns, profile, live, ...rooms } = library;
  for (const [room, functions] of Object.entries(rooms)) {
    for (const [name, value] of Object.entries(functions ?? {})) {
      if (typeof value === "function" && !met.has(`${room}.${name}`)) wrong.push(`${room}.${name} never answered`);
    }
  }
  return { count, functions: met.size, wrong };
}
