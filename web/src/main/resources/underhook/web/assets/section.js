// The leg from the side, drawn at the real width: ground, canopy, wires in true position, the way
// of the aircraft and of the load, the least gap with its number. The slider flies the leg.
import { html, svg, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { t } from './words.js';
import * as u from './units.js';

const PAD = { left: 56, right: 10, top: 16, bottom: 24 };
const has = (value) => value != null;

export const scaleOf = (low, high, from, to) => (value) => from + ((value - low) / (high - low || 1)) * (to - from);

/** Round steps, so that an axis carries about that many ticks. */
export function ticks(low, high, about) {
  const rough = (high - low) / about || 1;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((n) => n * power).find((n) => n >= rough);
  const found = [];
  for (let v = Math.ceil(low / step) * step; v <= high; v += step) found.push(v);
  return found;
}

/** Round steps of the reader's unit, in metres. */
const steps = (low, high, about, unitM) => ticks(low / unitM, high / unitM, about).map((v) => v * unitM);

const trace = (points, x, y, of) => points.filter((p) => has(of(p)))
  .map((p, i) => `${i ? 'L' : 'M'}${x(p.s).toFixed(1)} ${y(of(p)).toFixed(1)}`).join('');
const area = (points, x, y, of, floor) => {
  const known = points.filter((p) => has(of(p)));
  return known.length ? `${trace(known, x, y, of)}L${x(known.at(-1).s)} ${floor}L${x(known[0].s)} ${floor}Z` : '';
};

export function section(data, leg) {
  const k = u.enlarge(), w = Math.max(240, (state.figureWidth || 420) / k), h = 240;
  const points = data.points, last = points.at(-1).s;
  const heights = points.flatMap((p) => [p.ground, p.canopy, p.aircraft, p.load]).filter(has);
  const low = Math.min(...heights) - 10, high = Math.max(...heights) + 15;
  const x = scaleOf(0, last, PAD.left, w - PAD.right), y = scaleOf(low, high, h - PAD.bottom, PAD.top);
  const exaggeration = ((h - PAD.top - PAD.bottom) / (high - low)) / ((w - PAD.left - PAD.right) / last);
  const here = points[Math.round(state.at * (points.length - 1))], least = data.least;
  return html`<svg class="chart section" width=${w * k} height=${h * k} viewBox="0 0 ${w} ${h}" role="img" aria-label=${words(data, leg)}>
    <defs><pattern id="earth" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" class="under" /><path d="M-2 2 2-2M0 8 8 0M6 10l4-4" class="hatch" /></pattern>
      <pattern id="trees" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M1 5 3 1 5 5" class="hatch" /></pattern></defs>
    ${steps(low, high, 4, u.LENGTH_M()).map((v) => svg`<path class="grid" d="M${PAD.left} ${y(v)}H${w - PAD.right}" /><text x=${PAD.left - 13} y=${y(v) + 4} class="right">${u.length(v)}</text>`)}
    ${steps(0, last, Math.max(2, Math.floor(w / 110)), u.DISTANCE_M()).map((v) => svg`<path class="grid" d="M${x(v)} ${h - PAD.bottom}v4" /><text x=${x(v)} y=${h - 6} class=${x(v) > w - 34 ? 'right' : v ? 'middle' : ''}>${u.distance(v)}</text>`)}
    <path class="trees" d=${area(points, x, y, (p) => p.canopy ?? p.ground, h - PAD.bottom)} />
    <path class="earth" d=${area(points, x, y, (p) => p.ground, h - PAD.bottom)} />
    <path class="aircraft" d=${trace(points, x, y, (p) => p.aircraft)} /><path class="load" d=${trace(points, x, y, (p) => p.load)} />
    ${(data.wires ?? []).map((wire) => svg`<g class="wire"><path d="M${x(wire.s)} ${y(wire.high)}V${y(wire.low)}M${x(wire.s) - 5} ${y(wire.high)}h10M${x(wire.s) - 5} ${y(wire.low)}h10" /><text x=${x(wire.s) + 7} y=${y(wire.high) - 3}>${wire.name ?? wire.id ?? ''}</text></g>`)}
    ${least ? gap(least, points, x, y, w) : nothing}
    ${here && has(here.aircraft) ? svg`<g class="now"><path d="M${x(here.s)} ${y(here.aircraft)}V${y(here.load ?? here.aircraft)}" /><path d="M${x(here.s) - 8} ${y(here.aircraft)}h16l-3-6h-10Z" /><rect x=${x(here.s) - 4} y=${y(here.load ?? here.aircraft) - 2} width="8" height="6" /></g>` : nothing}
    <text x=${w - PAD.right} y="11" class="right">${t('section.exaggeration', { factor: exaggeration.toFixed(1) })}</text>
  </svg>
  ${legend()}
  <label class="slider">${t('section.fly')} <input type="range" min="0" max="1" step="0.005" .value=${String(state.at)}
    @input=${(event) => actions.fly(Number(event.target.value))}></label>
  <p class="readout">${readout(here)}</p>`;
}

// What is what, beside the drawing rather than over it.
const legend = () => html`<p class="legend" aria-hidden="true">${[['aircraft', 'M0 6h26'], ['load', 'M0 6h26'], ['trees', 'M1 1h24v10H1Z'], ['earth', 'M1 1h24v10H1Z']].map(([what, d]) => html`<span
  ><svg class="chart" width="26" height="12" viewBox="0 0 26 12">${svg`<path class=${what} d=${d} />`}</svg>${t(`section.${what}`)}</span>`)}</p>`;

function gap(least, points, x, y, w) {
  const near = points.reduce((a, b) => (Math.abs(b.s - least.s) < Math.abs(a.s - least.s) ? b : a));
  const above = near.load ?? near.aircraft, below = near.canopy ?? near.ground, px = x(least.s);
  return svg`<g class="least"><path d="M${px} ${y(above)}V${y(below)}M${px - 5} ${y(above)}h10M${px - 5} ${y(below)}h10" />
    <text x=${px > w - 110 ? px - 6 : px + 6} y=${Math.min(y(below) - 5, (y(above) + y(below)) / 2 + 4)} class=${px > w - 110 ? 'right' : ''}>${t('section.least', { gap: u.length(least.gapM, 'down', 1) })}</text></g>`;
}

const words = (data, leg) => t('section.words', { from: leg?.from ?? '', to: leg?.to ?? '',
  distance: u.distance(data.points.at(-1).s), gap: u.length(data.least?.gapM, 'down', 1), where: u.distance(data.least?.s) });

const readout = (here) => (here ? t('section.readout', { distance: u.distance(here.s), aircraft: u.amsl(here.aircraft, 'down'),
  load: u.amsl(here.load, 'down'), ground: u.amsl(here.canopy ?? here.ground, 'up'),
  minute: here.minute == null ? '' : u.minutes(here.minute) }) : '');
