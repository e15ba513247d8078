// The day as lanes over one axis of time: pilot, fuel, line fitted, crews, weather, sun, breaks.
// A lift is moved by dragging its bar or with the arrow keys; what that costs shows before it counts.
import { html, svg, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { offsetIn, offsetMs } from './offsets.js';
import { scaleOf } from './section.js';
import { plainly, t } from './words.js';
import * as u from './units.js';

const TITLES = 118, TITLES_MOST = 240, LETTER = 6.6, LEFT = 4, LANE = 30, TOP = 26, FUEL = 64;
// A lift of a few minutes must stay wide enough for its name.
const HOUR = 250;
// Half of what a time of day takes, so that the first one is not cut off at the edge.
const HALF_TIME = 22, HALF_TIME_AND_OFFSET = 40;
const whole = (step, index) => ({ fromAt: step.startAt, toAt: step.endAt, what: t(`step.${step.kind}`), short: t(`short.${step.kind}`), kind: step.kind,
  lift: state.plan.view.lifts.find((lift) => lift.step === index) });

/** Neighbouring steps that share a value, as one span. */
function together(steps, valueOf, what) {
  const spans = [];
  for (const step of steps) {
    const last = spans.at(-1), value = valueOf(step);
    if (last && last.value === value) last.toAt = step.endAt;
    else spans.push({ fromAt: step.startAt, toAt: step.endAt, value, what: what(value), kind: value > 0 ? 'line' : 'off' });
  }
  return spans;
}

const weather = (hour) => ({ fromAt: hour.from, toAt: hour.to, kind: 'weather', brief: true, short: `${hour.windKt}/${hour.gustKt}`,
  what: t('lane.wind', { from: u.bearing(hour.windFromTrueDeg), wind: u.speed(hour.windKt), gust: u.speed(hour.gustKt), words: hour.words }) });

/** A way in towards a low sun, shown for the lift that flies it. */
function glare(item) {
  const step = state.plan.steps.find((one) => one.drops?.some((drop) => drop.load === item.load));
  return { fromAt: step?.startAt, toAt: step?.endAt, kind: 'sun', short: item.load, what: t('lane.glare', { load: item.load, place: item.place }) };
}

function allLanes() {
  const { steps, crews, view } = state.plan;
  const byCrew = Map.groupBy ? Map.groupBy(crews, (row) => row.crew) : crews.reduce((m, row) => m.set(row.crew, [...(m.get(row.crew) ?? []), row]), new Map());
  return [
    { title: t('lane.pilot'), spans: steps.map(whole) },
    { title: t('lane.line'), spans: together(steps, (step) => step.lineLengthM, (m) => (m > 0 ? u.length(m) : t('line.off'))) },
    ...[...byCrew].map(([crew, rows]) => ({ title: t('lane.crew', { crew }), spans: rows.map((row) => ({ ...row, what: `${row.place}: ${plainly(row.doing)}`, short: row.place, kind: 'crew' })) })),
    ...view.lanes.filter((lane) => lane.kind === 'weather').map((lane) => ({ title: t('lane.weather'), spans: lane.items.map(weather) })),
    ...view.lanes.filter((lane) => lane.kind === 'sun').map((lane) => ({ title: t('lane.sun'), spans: lane.items.map(glare) })),
  ].filter((lane) => lane.spans.length);
}

export function lanes() {
  if (!state.plan) return html`<p>${t('plan.none')}</p>`;
  const { steps } = state.plan, rows = allLanes();
  const start = u.seconds(steps[0].startAt), end = u.seconds(steps.at(-1).endAt);
  const k = u.enlarge(), wide = titlesWide(rows), w = Math.max(700, Math.round(((document.querySelector('main')?.clientWidth ?? 900) - 44) / k) - wide, (end - start) / 3600 * HOUR);
  const h = TOP + FUEL + rows.length * LANE + 6, x = scaleOf(start, end, LEFT, w - 8);
  return html`<section class="lanes" aria-label=${t('panel.lanes')}>
    <p class="hint">${t('lanes.hint')}</p>
    <div class="lanebox">${titles(rows, { h, k, wide })}<div class="wide" tabindex="0" role="group" aria-label=${t('lanes.words')}><svg class="chart lanes" width=${w * k} height=${h * k} viewBox="0 0 ${w} ${h}" role="group" aria-label=${t('lanes.words')} @keydown=${keyed}>
      ${hours(start, end, x, h)}
      ${fuelLane(steps, x)}
      ${rows.map((lane, i) => svg`<g transform="translate(0 ${TOP + FUEL + i * LANE})"><path class="grid" d="M0 ${LANE}H${w}" />
        ${lane.spans.filter((span) => span.fromAt && span.toAt).map((span) => bar(span, x, [start, end]))}</g>`)}
    </svg></div></div></section>`;
}

/** As wide as the longest name of a crew needs, within reason. */
const titlesWide = (rows) => Math.min(TITLES_MOST, Math.max(TITLES, ...rows.map((lane) => 8 + LETTER * lane.title.length)));

/** What each lane is; it stays when the lanes are pushed sideways. */
function titles(rows, { h, k, wide }) {
  const full = state.plan.view.tankKg;
  return html`<svg class="chart" width=${wide * k} height=${h * k} viewBox="0 0 ${wide} ${h}" aria-hidden="true">
    <text x="2" y=${TOP + 20}>${t('lane.fuel')}</text><text x="2" y=${TOP + 40} class="small">${t('lane.fuelWords')}</text>
    ${full ? svg`<text x=${wide - 4} y=${TOP + 8} class="right small">${u.mass(full)}</text><text x=${wide - 4} y=${TOP + FUEL - 4} class="right small">${u.mass(0)}</text>` : nothing}
    ${rows.map((lane, i) => svg`<text x="2" y=${TOP + FUEL + i * LANE + 19}>${lane.title}</text>`)}</svg>`;
}

function hours(start, end, x, h) {
  const marks = [];
  // A zone may be half an hour off the others.
  const offsetS = offsetMs(offsetIn(state.plan.steps[0].startAt)) / 1000;
  for (let at = Math.ceil((start + offsetS) / 3600) * 3600 - offsetS; at < end; at += 3600) {
    marks.push(svg`<path class="grid" d="M${x(at)} 18V${h}" /><text x=${Math.max(x(at), state.job?.offsets?.length > 1 ? HALF_TIME_AND_OFFSET : HALF_TIME)} y="14" class="middle">${u.clockAt(at * 1000, state.plan.steps[0].startAt)}</text>`);
  }
  return marks;
}

function fuelLane(steps, x) {
  const full = state.plan.view.tankKg || Math.max(...steps.map((step) => step.fuelEndKg));
  const y = scaleOf(0, full, TOP + FUEL - 6, TOP + 4);
  const line = steps.map((step, i) => `${i ? 'L' : 'M'}${x(u.seconds(step.startAt)).toFixed(1)} ${y(step.fuelStartKg).toFixed(1)}L${x(u.seconds(step.endAt)).toFixed(1)} ${y(step.fuelEndKg).toFixed(1)}`).join('');
  const most = state.plan.view.lifts.map((lift) => [lift, steps[lift.step]]).map(([lift, step]) => svg`<path class="most" d="M${x(u.seconds(step.startAt))} ${y(lift.mostReadKg)}H${x(u.seconds(step.endAt))}" />`);
  return svg`${[0, full].map((kg) => svg`<path class="grid" d="M${LEFT} ${y(kg)}H${x(u.seconds(steps.at(-1).endAt))}" />`)}<path class="fuelline" d=${line} />${most}`;
}

function bar(span, x, [start, end]) {
  const a = x(Math.max(start, u.seconds(span.fromAt))), b = x(Math.min(end, u.seconds(span.toAt)));
  if (b <= a) return nothing;
  const wide = Math.max(2, b - a - 1), number = span.lift?.number;
  const all = span.lift?.loads ?? [];
  const label = span.lift ? (wide > 7 * all.join('+').length || all.length < 2 ? all.join('+') : `${all[0]}+`) : !span.brief && span.kind !== 'crew' && wide > 7 * span.what.length ? span.what : span.short ?? span.what;
  const words = `${u.clock(span.fromAt)}–${u.clock(span.toAt)} ${span.lift ? all.join('+') : span.what}`;
  const text = wide > 6.2 * label.length ? svg`<text x=${a + wide / 2} y="19" class="middle">${label}</text>` : nothing;
  if (!number) return svg`<g class="span ${span.kind ?? ''} ${span.state ?? ''}"><rect x=${a} y="5" width=${wide} height=${LANE - 8}><title>${words}</title></rect>${text}</g>`;
  return svg`<g class="span lift ${span.lift.status} ${state.lift === number ? 'chosen' : ''}" tabindex="0" role="button" data-lift=${number}
    aria-label=${t('lanes.lift', { lift: number, words, state: t(`state.${span.lift.status}`) })}
    @click=${() => actions.choose(number)} @pointerdown=${(event) => drag(event, number)}>
    <rect x=${a} y="5" width=${wide} height=${LANE - 8}><title>${words}</title></rect>${text}</g>`;
}

/** Left and right walk, with Alt they ask for a move; Enter chooses. */
function keyed(event) {
  const bar = event.target.closest?.('[data-lift]');
  if (!bar) return;
  const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key], number = Number(bar.dataset.lift);
  if (event.key === 'Enter' || event.key === ' ') actions.choose(number);
  else if (by && event.altKey) actions.askMove(number, by);
  else if (by) event.currentTarget.querySelector(`[data-lift="${number + by}"]`)?.focus();
  else return;
  event.preventDefault();
}

function drag(event, number) {
  const from = event.clientX, chart = event.currentTarget.ownerSVGElement, bar = event.currentTarget;
  const move = (e) => bar.setAttribute('transform', `translate(${e.clientX - from} 0)`);
  const drop = (e) => {
    removeEventListener('pointermove', move);
    bar.removeAttribute('transform');
    if (Math.abs(e.clientX - from) < 8) return;
    const bars = [...chart.querySelectorAll('[data-lift]')].filter((one) => one !== bar);
    const before = bars.filter((one) => one.getBoundingClientRect().left + one.getBoundingClientRect().width / 2 < e.clientX);
    actions.openMove(number, before.length ? Number(before.at(-1).dataset.lift) : 0);
  };
  addEventListener('pointermove', move);
  addEventListener('pointerup', drop, { once: true });
}
