// What the day is worth and how safe its end is: the chance of finishing, the price, and what other
// days of the same job would cost. Shown when the plan has them; all are the server's figures.
import { html, svg, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { said, t } from './words.js';
import * as u from './units.js';

const CHANCES = ['allInTime', 'beforeWind', 'beforeDark', 'withinDuty', 'withinFuel'];

/** A chance in words: what was counted, and what the true one is not below. */
export const chance = (one) => (one ? t('odds.chance', { counted: Math.floor(one.countedPercent), least: Math.floor(one.leastPercent) }) : '–');

// Ten boxes, filled as far as the lower end is sure: to be read without its colour or its number.
const tenths = (one) => html`<svg class="tenths" viewBox="0 0 102 12" width="102" height="12" aria-hidden="true">${Array.from({ length: 10 }, (_, i) => svg`
  <rect x=${1 + i * 10} y="1" width="9" height="10" class=${one.leastPercent >= (i + 1) * 10 ? 'full' : one.countedPercent >= (i + 1) * 10 ? 'half' : ''} />`)}</svg>`;

function gained(gain) {
  const earlier = gain.finishEarlierMinutes >= 1 ? t('odds.earlier', { minutes: gain.finishEarlierMinutes.toFixed(0) }) : '';
  const surer = gain.gainPercent >= 0.1 ? t('odds.surer', { gain: gain.gainPercent.toFixed(1), least: gain.leastGainPercent.toFixed(1) }) : '';
  return [surer, earlier].filter(Boolean).join(', ');
}

function odds(found) {
  const gains = (found.gains ?? []).filter(gained).slice(0, 5);
  return html`<h3>${t('odds.title')}</h3><p class="hint">${t('odds.hint', { replays: found.replays, samples: found.learnedSamples })}</p>
    <dl class="pairs">${CHANCES.filter((name) => found[name]).map((name) => html`<dt>${t(`odds.${name}`)}</dt><dd>${tenths(found[name])} ${chance(found[name])}</dd>`)}
      <dt>${t('odds.finish')}</dt><dd>${t('odds.between', { median: u.clock(found.finishMedianAt), late: u.clock(found.finishLateAt) })}</dd>
      ${found.placed ? html`<dt>${t('odds.placed')}</dt><dd>${t('odds.placedWords', { most: found.placed.nineOfTenDays, half: found.placed.halfOfDays, planned: found.placed.planned })}</dd>` : nothing}</dl>
    ${surer()}${seldom(found.placed)}
    ${gains.length ? html`<h4>${t('odds.gains')}</h4><ul>${gains.map((gain) => html`<li>${said(gain.what)}: ${gained(gain)}</li>`)}</ul>` : nothing}
    ${found.lastStarts?.length ? html`<h4>${t('odds.lastStarts')}</h4><ul>${found.lastStarts.map((one) => html`<li><b>${one.load}</b> ${one.place}:
      ${t('odds.last', { planned: u.clock(one.plannedAt), last: u.clock(one.lastAt) })}, ${chance(one.inTime)}</li>`)}</ul>` : nothing}`;
}

const SURE = 90, WISHED = 80;

/** Loads that a day ended at its limits leaves more often than one time of ten. */
function seldom(placed) {
  const rare = (placed?.loads ?? []).filter((one) => one.inTime.leastPercent < SURE);
  return rare.length ? html`<details><summary>${t('odds.seldom')}: ${rare.length}</summary><ul>${rare.map((one) => html`<li>${t('odds.seldomOne', { load: one.load, place: one.place, at: u.clock(one.plannedAt), chance: chance(one.inTime) })}</li>`)}</ul></details>` : nothing;
}

/** What to leave for another day, so that the rest is in time as often as is wished. */
const surer = () => html`<form class="acts" @submit=${(event) => {
  event.preventDefault();
  actions.openSurer(new FormData(event.target).get('days'));
}}><label><input name="days" type="number" min="1" max="99" required value=${WISHED}> ${t('odds.sureWish')}</label> <button>${t('odds.sureAsk')}</button></form>`;

/** Each comfort that is refused, where and for what price. */
const comforts = (found) => html`<details><summary>${t('comforts.title', { count: found.comforts.length })}</summary>
  <div class="wide" tabindex="0" role="region" aria-label=${t('price.comforts')}><table><thead><tr>${['what', 'who', 'place', 'at', 'count', 'price'].map((head) => html`<th scope="col">${t(`comforts.${head}`)}</th>`)}</tr></thead>
  <tbody>${found.comforts.map((one) => html`<tr><th scope="row">${t(`comforts.${one.comfort}`)}</th><td>${one.subject}</td><td>${one.place}</td><td>${u.clock(one.at)}</td>
    <td class="num">${one.unit === 'set-down' ? nothing : `${one.count} ${one.unit}`}</td>
    <td class="num">${u.money(one.cents, found.currency)}</td></tr>`)}</tbody></table></div></details>`;

function price(found) {
  const row = (what, cents, kind = '') => html`<tr class=${kind}><th scope="row">${t(`price.${what}`)}</th><td class="num">${u.money(cents, found.currency)}</td></tr>`;
  return html`<h3>${t('trade.price')}</h3><table><tbody>${row('flying', found.flyingCents)}${row('standing', found.standingCents)}${row('people', found.peopleCents)}${row('comforts', found.comfortsCents ?? 0)}
    ${row('total', found.totalCents, 'total')}</tbody></table>
    ${found.comforts?.length ? comforts(found) : nothing}
    ${proven(state.plan.summary)}`;
}

/** How near the day is to what no order goes below. */
function proven(sum) {
  if (sum.flightGapPercent == null) return nothing;
  const flying = sum.flightGapPercent === 0 ? t('sum.best') : t('sum.gap', { percent: Math.ceil(sum.flightGapPercent) });
  const finish = sum.finishGapPercent == null ? '' : sum.finishGapPercent === 0 ? t('sum.soonest') : t('sum.noSooner', { at: u.clock(sum.finishBoundAt) });
  const people = sum.peopleAsFlownBoundMinutes, hours = sum.hoursAsFlownBoundMinutes;
  return html`<p>${flying} ${finish} ${sum.provenFor ? t(`sum.${sum.provenFor}`) : ''}</p>
    ${people == null ? nothing : html`<p class="hint">${t('sum.people', { least: u.minutesDown(people) })}</p>`}
    ${hours == null ? nothing : html`<p class="hint">${t('sum.hours', { least: u.minutesDown(hours) })}</p>`}`;
}

const more = (cents, currency) => (cents === 0 ? '' : ` (${cents > 0 ? '+' : '−'}${u.money(Math.abs(cents), currency)})`);

/** Days to choose from, the plan of record among them; another one is asked for like any other change. */
function front(days, currency) {
  const chosen = days.find((one) => one.chosen);
  return html`<h3>${t('trade.front')}</h3><p class="hint">${t(days.length > 1 ? 'trade.frontHint' : 'trade.frontOne')}</p>
    ${days.length < 2 ? nothing : html`<table><thead><tr><th scope="col">${t('sum.flight')}</th><th scope="col">${t('sum.finish')}</th><th scope="col">${t('trade.price')}</th><td></td></tr></thead>
    <tbody>${days.map((one) => html`<tr class=${one.chosen ? 'chosen' : ''}><td>${u.minutes(one.flightMinutes)}</td><td>${u.clock(one.finishAt)}</td>
      <td class="num">${u.money(one.totalCents, currency)}${more(one.totalCents - (chosen?.totalCents ?? one.totalCents), currency)}</td>
      <td>${one.chosen ? html`<b>${t('whatif.record')}</b>` : html`<button @click=${() => actions.openRate(one)}>${t('trade.choose')}</button>`}</td></tr>`)}</tbody></table>`}`;
}

export function trade() {
  const { odds: found, summary } = state.plan, { price: paid, front: days } = summary;
  if (!found && !paid && !days?.length) return nothing;
  return html`<details class="trade"><summary><span>${t('trade.title')} ${paid ? html`<b>${u.money(paid.totalCents, paid.currency)}</b>` : nothing}${paid && found ? ', ' : nothing}${found ? html`<b>${chance(found.allInTime)}</b>` : nothing}</span></summary>
    ${paid ? price(paid) : nothing}${days?.length ? front(days, paid?.currency) : nothing}
    <p class="acts"><button @click=${actions.openWays}>${t('ways.show')}</button></p>${found ? odds(found) : nothing}</details>`;
}
