// Draws inputs of every function as crates/formulas/src/scattered.rs describes, calls the module as C does,
// and hashes every status, answer and refusal, as tests/c/scattered.c does. The same code runs in Node.js and in a
// browser.

const view = new DataView(new ArrayBuffer(8));

function ofBits(bits) {
  view.setBigUint64(0, bits);
  return view.getFloat64(0);
}

const u64 = (number) => BigInt.asUintN(64, number);

/** The k-th word of SplitMix64 from a state. */
function word(key, k) {
  let z = u64(key + k * 0x9e3779b97f4a7c15n);
  z = u64((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n);
  z = u64((z ^ (z >> 27n)) * 0x94d049bb133111ebn);
  return z ^ (z >> 31n);
}

/** FNV-1a of 64 bits, in two halves: big integers would take minutes. */
class Hash {
  high = 0xcbf29ce4;
  low = 0x84222325;

  byte(byte) {
    const low = (this.low ^ byte) >>> 0;
    // The prime is 2^40 + 0x1b3.
    const product = low * 0x1b3;
    this.high = (Math.imul(this.high, 0x1b3) + Math.floor(product / 2 ** 32) + (low << 8)) >>> 0;
    this.low = product >>> 0;
  }

  half(word) {
    for (let shift = 0; shift < 32; shift += 8) this.byte((word >>> shift) & 0xff);
  }

  integer(number) {
    this.half(number);
    this.half(0);
  }

  number(number) {
    // Any not-a-number is as good as another.
    view.setFloat64(0, number);
    if (Number.isNaN(number)) view.setBigUint64(0, 0x7ff8000000000000n);
    this.half(view.getUint32(4));
    this.half(view.getUint32(0));
  }

  get text() {
    return [this.high, this.low].map((half) => half.toString(16).padStart(8, "0")).join("");
  }
}

const SIGN = 1n << 63n;

/** The next number up or down, by its bits. */
function next(bits, up) {
  if ((bits & ~SIGN) === 0n) return up ? 1n : 1n | SIGN;
  return bits >> 63n === (up ? 1n : 0n) ? bits - 1n : bits + 1n;
}

/** A number at a key. */
function drawn(key, input, near, place) {
  const a = word(key, 1n) % 256n;
  const { low, high, base } = input;
  const whole = input.kind === "whole";
  if (a < 2n) return ofBits(low);
  if (a < 4n) return ofBits(high);
  if (a === 4n) return whole ? ofBits(low) - 1 : ofBits(next(low, false));
  if (a === 5n) return whole ? ofBits(high) + 1 : ofBits(next(high, true));
  if (a === 6n && !whole) return NaN;
  const hasBase = near && a >= 32n && place < base.length;
  if (whole) {
    if (hasBase) return ofBits(base[place]);
    const span = BigInt(ofBits(high) - ofBits(low)) >> (word(key, 3n) % 8n);
    return ofBits(low) + Number(word(key, 2n) % (span + 1n));
  }
  const b = word(key, 2n);
  if (hasBase) return base[place] === 0n ? 0 : ofBits(u64(base[place] + (b % (1n << 50n)) - (1n << 49n)));
  const c = word(key, 3n);
  const negative = high >> 63n === 1n || high === 0n || (low >> 63n === 1n && c >> 63n === 1n);
  const top = negative ? low & ~SIGN : high;
  const other = negative ? high ^ SIGN : low;
  const bottom = other >> 63n === 1n ? 0n : other;
  const span = 1n << (52n + (c % 8n > 0n ? (c % 8n) - 1n : 0n));
  const below = top > span ? top - span : 0n;
  const floor = below > bottom ? below : bottom;
  const magnitude = floor + (b % (top - floor + 1n));
  return ofBits(negative && magnitude > 0n ? magnitude | SIGN : magnitude);
}

/** A number, a code or a flag of a point. */
function one(point, near, input) {
  const key = point ^ input.key;
  if (input.kind === "number" || input.kind === "whole") return drawn(key, input, near, 0);
  const [example] = input.base;
  if (near && word(key, 1n) % 256n >= 32n) {
    if (input.kind === "flag") return example === undefined ? 0 : ofBits(example);
    if (example !== undefined) return ofBits(example);
  }
  const b = word(key, 2n);
  return input.kind === "flag" ? Number(b % 2n) : 1 + Number(b % BigInt(input.count));
}

/** Inputs with their numbers as such: JSON has none of 64 bits. */
function read(input) {
  const bits = (text) => BigInt(`0x${text}`);
  return { ...input, key: bits(input.key), low: bits(input.low), high: bits(input.high), base: input.base.map(bits) };
}

/** Bytes of an error, and of all that a call needs. */
const ERROR = 64;
const ROOM = 16384;

/** Hashes of a module's answers against those of plans, at all points or those "onBoards"; what is wrong, and how many. */
export function check(exports, plans, share = "all") {
  const start = (exports.__heap_base.value + 7) & ~7;
  const missing = start + ROOM - exports.memory.buffer.byteLength;
  if (missing > 0) exports.memory.grow(Math.ceil(missing / 65536));
  const memory = new DataView(exports.memory.buffer);
  const put = (at, kind, number) =>
    kind === "double" ? memory.setFloat64(at, number, true) : memory.setInt32(at, number, true);
  const takes = {
    double: (at) => memory.getFloat64(at, true),
    int: (at) => memory.getInt32(at, true),
    unsigned: (at) => memory.getUint32(at, true),
  };
  const wrong = [];
  let count = 0;
  for (const { id, name, [share]: wanted, key, takes: parts, answer } of plans) {
    const inputs = parts.map((part) => ({ ...part, fields: part.fields.map(([at, kind, of]) => [at, kind, read(of)]) }));
    const hash = new Hash();
    const places = [start, start + ERROR];
    for (let number = 0; number < wanted.points; number++) {
      const point = word(BigInt(`0x${key}`), BigInt(number) + 1n);
      const near = word(point, 1n) % 2n === 1n;
      const args = [];
      let free = places[1] + answer.size;
      for (const { shape, size, fields } of inputs) {
        if (shape === "value") {
          args.push(one(point, near, fields[0][2]));
        } else if (shape === "record") {
          for (const [at, kind, input] of fields) put(free + at, kind, one(point, near, input));
          args.push(free);
          free += size;
        } else {
          const length = near ? fields[0][2].base.length : Number(word(point, 2n) % 12n);
          for (let place = 0; place < length; place++) {
            for (const [at, kind, input] of fields) {
              const item = drawn(word(point ^ input.key, 8n + BigInt(place)), input, near, place);
              put(free + place * size + at, kind, item);
            }
          }
          args.push(free, length);
          free += size * length;
        }
      }
      const status = exports[name](...args, places[1], places[0]);
      hash.integer(status);
      if (status === 0) {
        for (const [at, kind] of answer.leaves) hash.number(takes[kind](places[1] + at));
      } else {
        for (let at = 0; at < 32; at += 8) hash.number(memory.getFloat64(places[0] + at, true));
        for (let at = 36; at < 48; at += 4) hash.number(memory.getInt32(places[0] + at, true));
      }
    }
    count += wanted.points;
    if (hash.text !== wanted.hash) wrong.push(`${id}: ${hash.text}, not ${wanted.hash}`);
  }
  return { count, of: `scattered inputs of ${plans.length} functions`, wrong };
}
