// The clearance rose: for each line in stock a ring, for each heading a sector: free, near or
// refused. Wind comes in as an arrow from outside, the sun stands on the rim.
import { html, svg, nothing } from '/lib/lit/lit-html.js';
import { badge } from './marks.js';
import { said, t } from './words.js';
import * as u from './units.js';

const SIZE = 220, MID = SIZE / 2, INNER = 22, RIM = 80;
const at = (deg, r) => [MID + r * Math.sin((deg * Math.PI) / 180), MID - r * Math.cos((deg * Math.PI) / 180)].map((v) => v.toFixed(1)).join(' ');

function sector(from, to, inner, outer) {
  const large = to - from > 180 ? 1 : 0;
  return `M${at(from, inner)}L${at(from, outer)}A${outer} ${outer} 0 ${large} 1 ${at(to, outer)}L${at(to, inner)}A${inner} ${inner} 0 ${large} 0 ${at(from, inner)}Z`;
}

// A heading stands in the middle of its sector; an arc of a whole turn would close upon itself.
function ringPart(from, to, half, inner, outer) {
  if (to - from < 180) return sector(from - half, to - half, inner, outer);
  const middle = (from + to) / 2;
  return sector(from - half, middle - half, inner, outer) + sector(middle - half, to - half, inner, outer);
}

/** Neighbouring headings of one state and one reason, put together. */
export function runs(headings) {
  const width = 360 / headings.length, found = [];
  for (const heading of headings) {
    const last = found.at(-1);
    if (last && last.state === heading.state && last.reason === heading.reason) {
      last.to += width;
      last.marginM = Math.min(last.marginM ?? Infinity, heading.marginM ?? Infinity);
    } else found.push({ ...heading, from: heading.fromTrueDeg, to: heading.fromTrueDeg + width });
  }
  return found;
}

export function rose(data) {
  const width = (RIM - INNER) / data.lines.length;
  return html`<svg class="chart rose" width=${SIZE * u.enlarge()} height=${SIZE * u.enlarge()} viewBox="0 0 ${SIZE} ${SIZE}" role="img" aria-label=${t('rose.words')}>
    <defs><pattern id="dots" width="5" height="5" patternUnits="userSpaceOnUse"><rect width="5" height="5" class="near" /><circle cx="2" cy="2" r="1" class="ink" /></pattern>
      <pattern id="cross" width="5" height="5" patternUnits="userSpaceOnUse"><rect width="5" height="5" class="refused" /><path d="M0 0l5 5M5 0l-5 5" class="line" /></pattern></defs>
    ${data.lines.map((line, i) => runs(line.headings).map((run) => svg`<path class="sector ${run.state} ${line.chosen ? 'chosen' : ''}"
      d=${ringPart(run.from, run.to, 180 / line.headings.length, INNER + i * width + 1, INNER + (i + 1) * width - 1)}><title>${`${u.length(line.lengthM)}: ${t(`state.${run.state}`)} ${run.reason ?? ''}`}</title></path>`))}
    ${data.lines.map((line, i) => svg`<text class="ring" x=${MID} y=${MID - INNER - (i + 0.5) * width + 4}>${u.length(line.lengthM)}</text>`)}
    ${[[0, 'N'], [90, 'E'], [180, 'S'], [270, 'W']].map(([deg, key]) => svg`<text class="ring" x=${at(deg, RIM + 9).split(' ')[0]} y=${Number(at(deg, RIM + 9).split(' ')[1]) + 4}>${t(`north.${key}`)}</text>`)}
    ${data.windFromDeg == null ? nothing : svg`<g class="wind" transform="rotate(${data.windFromDeg} ${MID} ${MID})"><path d="M${MID} 2v24m-6-9 6 9 6-9" /></g>`}
    ${data.sunAzimuthDeg == null ? nothing : svg`<g class="sun"><circle cx=${at(data.sunAzimuthDeg, RIM + 22).split(' ')[0]} cy=${at(data.sunAzimuthDeg, RIM + 22).split(' ')[1]} r="6" /></g>`}
    ${way(data.chosenApproach, 'in')}${way(data.chosenDeparture == null ? null : (data.chosenDeparture), 'out')}
  </svg>
  <p class="readout">${data.windFromDeg == null ? nothing : t('rose.wind', { from: u.bearing(data.windFromDeg), speed: u.speed(data.windKt) })}
    ${data.sunAzimuthDeg == null ? nothing : t('rose.sun', { at: u.bearing(data.sunAzimuthDeg) })}</p>`;
}

// The way in comes from its bearing towards the middle, the way out leaves along its track.
const way = (deg, sense) => (deg == null ? nothing : svg`<g class="way ${sense}" transform="rotate(${deg} ${MID} ${MID})">
  <path d=${sense === 'in' ? `M${MID} ${MID - RIM}V${MID - 8}m-6-9 6 9 6-9` : `M${MID} ${MID - 8}V${MID - RIM + 2}m-6 9 6-9 6 9`} /></g>`);

/** The same, as sentences: the headings that are not free, and why. */
export function roseWords(data) {
  const rows = data.lines.flatMap((line) => runs(line.headings).filter((run) => run.state !== 'free').map((run) => ({ line, run })));
  return html`<details><summary>${t('rose.sectors', { count: rows.length })}</summary><ul class="sectors">${rows.map(({ line, run }) => html`<li>
    ${badge(run.state)} ${u.length(line.lengthM)}: ${u.bearing(run.from)} – ${u.bearing(run.to)} ${said(run.reason ?? '')}</li>`)}</ul></details>`;
}
