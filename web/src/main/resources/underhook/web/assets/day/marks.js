// Marks that differ by shape, pattern and word, never by hue alone.
import { html, nothing, svg } from '/lib/lit/lit-html.js';
import { said, t } from './words.js';
import { clock, line, mass, north, turned } from './units.js';

const SHAPES = {
  inside: svg`<circle cx="8" cy="8" r="6"/>`,
  near: svg`<path d="M8 1 15 14H1Z"/>`,
  outside: svg`<path class="stroke" d="M2 2 14 14M14 2 2 14"/>`,
  unknown: svg`<path class="stroke" d="M2 8H14"/>`,
};

/** A state in words with its shape. */
export const badge = (kind, words) => html`<span class=${`badge ${kind}`}><svg viewBox="0 0 16 16" aria-hidden="true">${SHAPES[kind]}</svg>${words ?? t(`state.${kind}`)}</span>`;

/** What was told of a place's ground and the plan does not know. */
export const told = (words) => (words?.length ? html`<div class="missing"><b>${badge('outside', t('told.title'))}</b><ul>${words.map((one) => html`<li>${said(one)}</li>`)}</ul>${t('told.words')}</div>` : nothing);

const STEPS = {
  refuel: (step) => t('before.refuel', { place: step.from, mass: mass(step.fuelToKg, 'down') }),
  line_change: (step) => (step.lineM ? t('before.line', { place: step.from, line: line(step.lineM) }) : t('before.lineOff', { place: step.from })),
  crew_move: (step) => t('before.crew', { crew: step.crew, from: step.from, to: step.to }),
  position: (step) => t('before.position', { from: step.from, to: step.to }),
  break: (step) => t('before.break', { place: step.from, until: clock(step.until) }),
};

/** What comes before the next lift, in its order. */
export const before = (steps, title = t('before.title')) => (steps?.length ? html`<section class="before" aria-label=${title}><h2>${title}</h2><ol>${steps.map((step) => html`<li><span>${clock(step.at)}</span> <b>${STEPS[step.kind]?.(step) ?? step.kind}</b></li>`)}</ol></section>` : nothing);

/** What of a load is dangerous goods, behind its name. */
export const dangerous = (load) => (load.dangerousGoods ? `, ${t('loader.dangerous', { what: load.dangerousGoods })}` : '');

/** A load that the load cell says to be heavier than every number of its lift was worked out for, until it is set down. */
export const heavier = (lift, readKg = lift.readKg) => (lift.state !== 'setDown' && readKg > lift.plannedKg + 0.1 ? html`<p class="missing">${badge('outside', `${lift.loads.map((load) => load.id).join(' + ')}: ${t('loader.heavier', { read: mass(readKg, 'up'), planned: mass(lift.plannedKg, 'down') })}`)}</p>` : nothing);

/** Whether another line hangs there than the lift was planned on. */
export const hangs = (standing, lift) => (standing.lineM !== null && Math.abs(standing.lineM - lift.lineM) > 0.05 ? html`<p>${badge('outside', t('line.other', { hangs: line(standing.lineM), planned: line(lift.lineM) }))}</p>` : nothing);

/** The line as a rope: whole with the line on, broken with it off; a knot once the releases were tried. */
export const rope = (standing) => {
  const on = standing.lineM !== null;
  return svg`<svg class=${`rope ${on ? 'on' : 'off'}`} viewBox="0 0 24 96" aria-hidden="true">
    <path class="thick" d=${on ? 'M12 2V94' : 'M12 2V30M12 66V94'} />
    ${on && standing.lineChecked ? svg`<circle class="knot" cx="12" cy="48" r="8"/>` : ''}
    ${on && !standing.lineChecked ? svg`<path class="open" d="M4 40 20 56M20 40 4 56"/>` : ''}
    ${on ? '' : svg`<path class="open" d="M5 40H19M5 56H19"/>`}
  </svg>`;
};

/** Three arrows on a ring, the reader's north up, as the numbers beside it are: where the machine comes from, where it leaves to, the wind. */
export const compass = (drop) => {
  const turn = (trueDeg) => `rotate(${turned(trueDeg)} 100 100)`;
  const way = drop.way;
  return svg`<svg class="compass" viewBox="0 0 200 200" role="img" aria-label=${t('pilot.compass')}>
    <circle cx="100" cy="100" r="78"/><text x="100" y="16">N ${north()}</text>
    <g transform=${turn(drop.approachFromTrueDeg)}><path class="in" d="M100 24V84"/><path class="head" d="M88 66 100 90 112 66Z"/></g>
    <g transform=${turn(drop.departureTrackTrueDeg)}><path class="out" d="M100 104V66"/><path class="head hollow" d="M89 68 100 44 111 68Z"/></g>
    ${way ? svg`<g transform=${turn(way.windFromTrueDeg)}><path class="wind" d="M100 2V22M88 2 100 14 112 2M88 12 100 24 112 12"/></g>` : ''}
    <circle class="place" cx="100" cy="100" r="7"/></svg>`;
};
