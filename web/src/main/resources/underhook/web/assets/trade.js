// What the day is worth and how safe its end is: the chance of finishing, the price, and what other
// days of the same job would cost. Shown when the plan has them; all are the server's figures.
import { html, svg, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { said, t } from './words.js';
import * as u from './units.js';

const CHANCES = ['allInTime', 'beforeWind', 'beforeDark', 'withinDuty', 'withinFuel'];

/** A chance in words: what was counted, and what the true one is not below. */
export const chance = (one) => (one ? t('odds.chance', { counted: Math.floor(one.countedPercent), least: Math.floor(one.leastPercent) }) : '–');

// Ten boxes, filled as far as the lower end is sure: to be read without its colour or its number.
const tenths = (one) => svg`<svg class="tenths" viewBox="0 0 102 12" width="102" height="12" aria-hidden="true">${Array.from({ length: 10 }, (_, i) => svg`
  <rect x=${1 + i * 10} y="1" width="9" height="10" class=${one.leastPercent >= (i + 1) * 10 ? 'full' : one.countedPercent >= (i + 1) * 10 ? 'half' : ''} />`)}</svg>`;

function odds(found) {
  return html`<h3>${t('odds.title')}</h3><p class="hint">${t('odds.hint', { replays: found.replays, samples: found.learnedSamples })}</p>
    <dl class="pairs">${CHANCES.filter((name) => found[name]).map((name) => html`<dt>${t(`odds.${name}`)}</dt><dd>${tenths(found[name])} ${chance(found[name])}</dd>`)}
      <dt>${t('odds.finish')}</dt><dd>${t('odds.between', { median: u.clock(found.finishMedianAt), late: u.clock(found.finishLateAt) })}</dd></dl>
    ${found.gains?.length ? html`<h4>${t('odds.gains')}</h4><ul>${found.gains.slice(0, 5).map((gain) => html`<li>${said(gain.what)}: ${t('odds.gain', {
      gain: gain.gainPercent.toFixed(1), least: gain.leastGainPercent.toFixed(1), minutes: gain.finishEarlierMinutes.toFixed(0) })}</li>`)}</ul>` : nothing}
    ${found.lastStarts?.length ? html`<h4>${t('odds.lastStarts')}</h4><ul>${found.lastStarts.map((one) => html`<li><b>${one.load}</b> ${one.place}:
      ${t('odds.last', { planned: u.clock(one.plannedAt), last: u.clock(one.lastAt) })}, ${chance(one.inTime)}</li>`)}</ul>` : nothing}`;
}

const money = (price) => (price.cents == null ? price.total ?? price.amount ?? '–' : `${(price.cents / 100).toFixed(2)} ${price.currency ?? ''}`);

const price = (found) => html`<h3>${t('trade.price')}</h3><p><b>${typeof found === 'object' ? money(found) : found}</b></p>`;

// The front as dots: flying along, the end upward; the plan of record is the filled one.
function front(points) {
  const known = points.filter((one) => one.flightMinutes != null && one.finishAt);
  if (!known.length) return nothing;
  return html`<h3>${t('trade.front')}</h3><p class="hint">${t('trade.frontHint')}</p><table><thead><tr><th scope="col">${t('sum.flight')}</th><th scope="col">${t('sum.finish')}</th><td></td></tr></thead>
    <tbody>${known.map((one) => html`<tr><td>${u.minutes(one.flightMinutes)}</td><td>${u.clock(one.finishAt)}</td>
      <td>${Math.abs(one.flightMinutes - state.plan.summary.flightMinutes) < 0.01 && one.finishAt === state.plan.summary.finishAt ? html`<b>${t('whatif.record')}</b>` : nothing}</td></tr>`)}</tbody></table>`;
}

export function trade() {
  const { odds: found, price: cost, summary } = state.plan, points = state.plan.front ?? summary.front;
  const paid = cost ?? summary.price;
  if (!found && paid == null && !points?.length) return nothing;
  return html`<details class="trade"><summary>${t('trade.title')}${found ? html` <b>${chance(found.allInTime)}</b>` : nothing}</summary>
    ${found ? odds(found) : nothing}${paid == null ? nothing : price(paid)}${points?.length ? front(points) : nothing}</details>`;
}
