// Masses and lengths within a sentence of the server, in the units the reader wants. The sentence is marked
// while it is English, for then it tells which side of a number is safe; it is turned when it is said.
// Desk and devices read it, each with a reader of its own.

// @source SP811 appendix B: exact definitions of pound, foot, nautical mile
export const KG_PER_LB = 0.45359237;
export const M_PER_FT = 0.3048;
export const M_PER_NMI = 1852;

const ROUND = { up: Math.ceil, down: Math.floor, near: Math.round };
// A hair, so that 340.0000001 from a division does not become 341, nor 204 lb, which a plan keeps to the millionth
// of a kilogram, 203.
export const HAIR = 2e-6;

export function round(value, side, decimals = 0) {
  const scale = 10 ** decimals;
  const nudge = side === 'up' ? -HAIR : side === 'down' ? HAIR : 0;
  return (ROUND[side](value * scale + nudge) / scale).toFixed(decimals);
}

const SIDES = ['up', 'down', 'near'], UNITS = ['kg', 'm', 'km'];
const US = { kg: ['lb', KG_PER_LB, 0], m: ['ft', M_PER_FT, 0], km: ['NM', M_PER_NMI / 1000, 2] };

/** What there is of room, of allowance or of fuel is rounded down; what weighs, is needed or is missing up. */
const THERE = /(?:\b(?:at most|no more than|may carry|no trees within|nothing of [^.]* within|No way [^.]* within|stands|Only|With)|°C:) $/;
const THERE_AFTER = /^ (?:away|(?:are )?to spare|from anywhere|beyond it|left of)/;
/** What names a line or a rate, or is laid beside another, is on neither side; what hangs on a line is heavy. */
const NAMED = /\b(?:line|line of|elevation is|terrain's|for each) $/;
const HANGS_AFTER = /^ hang/;
const side = (before, after) => (HANGS_AFTER.test(after) && !THERE.test(before) ? 'up'
  : NAMED.test(before) ? 'near' : THERE.test(before) || THERE_AFTER.test(after) ? 'down' : 'up');

/** A number with its unit, or several of one unit. A sling of the name "rope 15 m" keeps its name. */
const QUANTITY = /(^|[,;:(] ?|\b(?:and|are|at|add|begins|burns|carr(?:y|ies)|cover|each|from|is|least|line|moved|most|needs|of|Only|over|passes|says|something|stands|still|terrain's|than|to|[Ww]ith|within|weighs|wind) )((?:-?\d+(?:\.\d+)?(?:, |; | to ))*-?\d+(?:\.\d+)?) (kg|km|m)(?![\w/²³])/g;
const WITH_FEET = /(-?\d+) m(?= \(\d+ ft\))/g;
const NUMBER = /-?\d+(?:\.\d+)?/g;

// A mark stands behind its number: which unit it has, and how it is rounded.
const MARK = 0xe000;
const MARKED = /(-?\d+(?:\.\d+)?)([\ue000-\ue008])( (?:kg|km|m)(?![\w/²³]))?(?: \(\d+ ft\))?/g;
const mark = (unit, rounded) => String.fromCharCode(MARK + UNITS.indexOf(unit) * SIDES.length + SIDES.indexOf(rounded));

/** A range is as wide as it was or wider; what a table covers, as wide or narrower. */
function sides(numbers, before, after) {
  const range = numbers.includes(' to ') || / to $/.test(before);
  if (!range || THERE.test(before)) return [side(before, after)];
  return / (?:ends at|runs from) |°C/.test(`${before}${after}`) ? ['up', 'down'] : ['down', 'up'];
}

/** The sentence with its masses and lengths marked, for a reader of pounds and feet. */
export const marked = (text) => text
  .replace(WITH_FEET, (all, value) => `${value}${mark('m', 'up')} m`)
  .replace(QUANTITY, (all, lead, numbers, unit, at, whole) => {
    const rounded = sides(numbers, whole.slice(0, at) + lead, whole.slice(at + all.length));
    let i = numbers.includes(' to ') ? 0 : rounded.length - 1;
    return `${lead}${numbers.replace(NUMBER, (value) => `${value}${mark(unit, rounded[Math.min(i++, rounded.length - 1)])}`)} ${unit}`;
  });

/** The same with what was marked in the reader's units. */
export const turned = (text) => text.replace(MARKED, (all, value, code, named) => {
  const n = code.charCodeAt(0) - MARK, [unit, size, decimals] = US[UNITS[Math.floor(n / SIDES.length)]];
  return `${round(Number(value) / size, SIDES[n % SIDES.length], decimals)}${named ? ` ${unit}` : ''}`;
});
