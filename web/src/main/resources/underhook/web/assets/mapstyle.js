// How things look on the map, by theme. What differs, differs in shape or line pattern first.
import { enlarge, length } from './units.js';
import { t } from './words.js';

const { style } = window.ol;

const css = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
const cache = new Map();

/** The colours of the theme in use; kept, because styles are asked for on every frame. */
function ink() {
  const theme = document.documentElement.dataset.theme + matchMedia('(prefers-color-scheme: dark)').matches;
  if (!cache.has(theme)) {
    cache.set(theme, { page: css('--page'), ink: css('--ink'), soft: css('--soft'), near: css('--near'), outside: css('--outside'), inside: css('--inside') });
  }
  return cache.get(theme);
}

const stroke = (color, width, lineDash) => new style.Stroke({ color, width, lineDash });
const fill = (color) => new style.Fill({ color });

/** Lines of that slope across an area; areas of different kinds get different hatches. */
function hatch(color, sense) {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = 8;
  const pen = canvas.getContext('2d');
  pen.strokeStyle = color;
  pen.lineWidth = 1;
  pen.beginPath();
  if (sense !== 'falling') { pen.moveTo(0, 8); pen.lineTo(8, 0); }
  if (sense !== 'rising') { pen.moveTo(0, 0); pen.lineTo(8, 8); }
  pen.stroke();
  return new style.Fill({ color: pen.createPattern(canvas, 'repeat') });
}

const point = (color, points, radius, angle = 0) => new style.RegularShape({ points, radius, angle, fill: fill(color.page), stroke: stroke(color.ink, 2) });

const label = (text, color, at = {}) => new style.Text({ text: String(text), font: '12px "Liberation Sans", Arial, sans-serif',
  fill: fill(color.ink), stroke: stroke(color.page, 3), ...at });

// What letting go means, along the way: closed is solid between heavy edges, guarded is a ladder, open
// is broken, named is plain; each says its word.
const cased = (c, ...inner) => [new style.Style({ stroke: stroke(c.ink, 14) }), ...inner];
const useWord = (f, c) => new style.Style({ text: label(`${t(`use.${f.get('use')}`)} ${f.get('what')}`, c, { placement: 'line', textBaseline: 'bottom', offsetY: -9 }) });
const USES = {
  closed: (f, c) => cased(c, new style.Style({ stroke: stroke(c.outside, 9) }), useWord(f, c)),
  guarded: (f, c) => cased(c, new style.Style({ stroke: stroke(c.near, 10) }), new style.Style({ stroke: new style.Stroke({ color: c.ink, width: 10, lineDash: [2, 6], lineCap: 'butt' }) }), useWord(f, c)),
  open: (f, c) => cased(c, new style.Style({ stroke: stroke(c.page, 10) }), new style.Style({ stroke: new style.Stroke({ color: c.near, width: 10, lineDash: [9, 6], lineCap: 'butt' }) })),
  named: (f, c) => cased(c, new style.Style({ stroke: stroke(c.inside, 10) }), useWord(f, c)),
};

/** Sparse dots, so that what lies under a wide band stays legible. */
function dots(color) {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = 12;
  const pen = canvas.getContext('2d');
  pen.fillStyle = color;
  pen.fillRect(1, 1, 1.6, 1.6);
  pen.fillRect(7, 7, 1.6, 1.6);
  return pen.createPattern(canvas, 'repeat');
}

const STYLES = {
  contours: (f, c) => [new style.Style({ stroke: stroke(c.soft, f.get('main') ? 1.4 : 0.5), text: f.get('main') ? label(length(f.get('heightAmslM')), c, { placement: 'line' }) : undefined })],
  ground: (f, c) => [new style.Style({ stroke: stroke(c.soft, 1, [6, 3]) })],
  water: (f, c) => [new style.Style({ stroke: stroke(c.ink, 1, [1, 4]), fill: hatch(c.soft, 'falling') })],
  zones: (f, c) => [new style.Style({ stroke: stroke(c.ink, 2.5, f.get('active') === false ? [3, 6] : [12, 4]), fill: f.get('active') === false ? undefined : hatch(c.outside, 'rising') })],
  releaseAreas: (f, c) => [new style.Style({ stroke: stroke(c.ink, 1.5, [2, 3]), fill: hatch(c.ink, 'both') })],
  roads: (f, c) => [new style.Style({ stroke: stroke(c.ink, 5) }), new style.Style({ stroke: stroke(c.page, 2.5) })],
  houses: (f, c) => [new style.Style({ image: point(c, 4, 6, Math.PI / 4), stroke: stroke(c.ink, 2), fill: fill(c.ink) })],
  people: (f, c) => [new style.Style({ image: point(c, 3, 7), stroke: stroke(c.ink, 2, [2, 5]) })],
  hazards: (f, c) => [new style.Style({ image: point(c, 5, 8), stroke: stroke(c.ink, 2, [8, 3, 2, 3]) })],
  wires: (f, c) => [new style.Style({ stroke: stroke(c.page, 6) }), new style.Style({ stroke: stroke(c.outside, 3, f.get('live') === false ? [6, 6] : undefined), text: label(f.get('name') ?? f.get('id') ?? '', c, { placement: 'line' }) })],
  strips: (f, c) => USES[f.get('use')](f, c),
  reach: (f, c, resolution) => [new style.Style({ stroke: new style.Stroke({ color: dots(c.soft), width: 2 * pixels(f.get('farthestM'), f, resolution), lineCap: 'round' }) })],
  legs: (f, c) => (f.get('chosen')
    ? [new style.Style({ stroke: stroke(c.page, 8), zIndex: 2 }), new style.Style({ stroke: stroke(c.ink, 4, f.get('empty') ? [2, 7] : undefined), zIndex: 3 })]
    : [new style.Style({ stroke: stroke(c.soft, 1.5, f.get('empty') ? [2, 5] : undefined) })]),
  sketch: (f, c) => (f.getGeometry().getType() === 'Point'
    ? [new style.Style({ image: new style.RegularShape({ points: 4, radius: 9, angle: Math.PI / 4, fill: fill(f.get('held') ? c.ink : c.page), stroke: stroke(c.ink, 3) }) })]
    : [new style.Style({ stroke: stroke(c.page, 7) }), new style.Style({ stroke: stroke(c.ink, 3, [10, 5]) })]),
  craft: (f, c) => [new style.Style({ image: new style.RegularShape({ points: 4, radius: 12, radius2: 3, fill: fill(c.ink), stroke: stroke(c.page, 2) }) })],
};

/** Metres on the ground as pixels of this view; Mercator stretches with the latitude. */
function pixels(metres, feature, resolution) {
  const y = feature.getGeometry().getExtent()[1];
  const stretch = Math.cosh(y / 6378137);
  return (metres * stretch) / resolution;
}

export const styleOf = (name) => (feature, resolution) => [...buffer(name, feature, resolution), ...STYLES[name](feature, ink(), resolution)];

/** How far to stay away, to scale, under what it belongs to. */
function buffer(name, feature, resolution) {
  const widthM = feature.get('bufferM');
  if (!(widthM > 0) || !['wires', 'houses', 'people', 'hazards'].includes(name)) return [];
  const reach = pixels(widthM, feature, resolution), color = ink();
  if (feature.getGeometry().getType() === 'Point') {
    return [new style.Style({ image: new style.Circle({ radius: Math.max(2, reach), stroke: stroke(color.outside, 1, [4, 4]), declutterMode: 'none' }) })];
  }
  return [new style.Style({ stroke: stroke(color.outside, 2 * reach + 1.5) }), new style.Style({ stroke: stroke(color.page, 2 * reach) })];
}

/** From the middle of a mark to its edge, and to the name beside it; pixels. */
const MARK = 10, BESIDE = 12;
/** Where a name may stand beside its mark, the first that is clear: to the right, the left, above, below. */
const SIDES = [[1, 0], [-1, 0], [0, 1], [0, -1]];

/** No name lies over the mark of another place, nor over the edge of the map while a side is clear of both; else it is in its usual place. */
function sideOf(feature, wide, high, { resolution, marks, seen }) {
  const [x, y] = feature.getGeometry().getCoordinates();
  const boxOf = ([right, up]) => {
    const left = right ? Math.min(0, right) * (wide + BESIDE) + Math.max(0, right) * BESIDE : -wide / 2;
    const low = up ? Math.min(0, up) * (high + BESIDE) + Math.max(0, up) * BESIDE : -high / 2;
    return [left - MARK, low - MARK, left + wide + MARK, low + high + MARK].map((px, i) => (i % 2 ? y : x) + px * resolution);
  };
  const clear = SIDES.filter((side) => !marks.forEachFeatureInExtent(boxOf(side), (other) => other.getId() !== feature.getId()));
  return clear.find((side) => { const [west, , east] = boxOf(side); return west >= seen[0] && east <= seen[2]; }) ?? clear[0] ?? SIDES[0];
}

/** Names of what is chosen come before other places, those before areas, when there is no room for all. */
export function nameOf(feature, about) {
  if (feature.get('title') != null) return new style.Style({ zIndex: 1, text: label(feature.get('title'), ink(), { font: `italic ${13 * enlarge()}px "Liberation Sans", Arial, sans-serif` }) });
  const high = (about.chosen ? 16 : 14) * enlarge();
  const [right, up] = sideOf(feature, String(feature.get('id')).length * high * 0.65, high, about);
  return new style.Style({ zIndex: about.chosen ? 3 : 2, text: label(feature.get('id'), ink(), { font: `bold ${high}px "Liberation Sans", Arial, sans-serif`, stroke: stroke(ink().page, 4),
    offsetX: right * BESIDE, offsetY: -up * (BESIDE + high / 2), textAlign: right > 0 ? 'left' : right < 0 ? 'right' : 'center' }) });
}

// Laydowns are squares, landing places carry an H, sites are upright diamonds; what is not agreed
// has a broken edge; the chosen place is filled.
const OUTLINE = {
  laydown: [[-8, -8], [8, -8], [8, 8], [-8, 8]],
  landing: [[-9, 0], [-4.5, -8], [4.5, -8], [9, 0], [4.5, 8], [-4.5, 8]],
  site: [[0, -10], [7, 0], [0, 10], [-7, 0]],
};

export function drawPlace(pen, at, feature, { ratio, chosen, held }) {
  const color = ink(), role = feature.get('kind');
  const corners = OUTLINE[role] ?? OUTLINE.site;
  pen.save();
  pen.translate(at[0], at[1]);
  pen.scale(ratio * (chosen ? 1.25 : 1), ratio * (chosen ? 1.25 : 1));
  pen.beginPath();
  corners.forEach(([x, y], i) => (i ? pen.lineTo(x, y) : pen.moveTo(x, y)));
  pen.closePath();
  pen.lineWidth = 5;
  pen.strokeStyle = color.page;
  pen.stroke();
  pen.fillStyle = chosen ? color.ink : color.page;
  pen.fill();
  pen.lineWidth = 2;
  pen.strokeStyle = color.ink;
  pen.setLineDash(feature.get('agreed') === false ? [3, 3] : []);
  pen.stroke();
  if (held) {
    // Where the keys stand: a ring of its own, whatever the place is.
    pen.setLineDash([]);
    pen.beginPath();
    pen.arc(0, 0, 15, 0, 7);
    pen.stroke();
  }
  if (role === 'landing') {
    pen.setLineDash([]);
    pen.strokeStyle = chosen ? color.page : color.ink;
    pen.beginPath();
    for (const line of [[-3, -4, -3, 4], [3, -4, 3, 4], [-3, 0, 3, 0]]) { pen.moveTo(line[0], line[1]); pen.lineTo(line[2], line[3]); }
    pen.stroke();
  }
  pen.restore();
}
