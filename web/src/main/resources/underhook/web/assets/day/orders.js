// A new order after what was told, as differences to accept or not. Nothing counts before it is accepted.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state, set } from './state.js';
import { delivered, post, news, stock } from './link.js';
import { clock } from './units.js';
import { said, t } from './words.js';

/** Less is no reason to read a second order. */
const WORTH_CENTS = 100;

async function ask(heavier) {
  set({ orders: { asking: true } });
  try {
    // What was told on this device a moment ago must count.
    await delivered();
    const known = await post('order', { heavier, first: true });
    set({ orders: { ...known, asking: true } });
    await askBetter(known, heavier);
  } catch (failed) {
    set({ orders: { failed: failed.status ? failed.message : t('orders.offline') } });
  }
}

/** A better order is told beside the known one: what somebody reads and is about to accept does not change. */
async function askBetter(known, heavier) {
  let better = null;
  try {
    const found = await post('order', { heavier });
    const more = known.leftOut.length - found.leftOut.length;
    // What nobody could see in what is told of it is no better order.
    const cheaper = Math.abs(known.costs.restCents - found.costs.restCents) < WORTH_CENTS ? 0 : known.costs.restCents - found.costs.restCents;
    const gains = more || cheaper || known.finishMin - found.finishMin + known.flightMin - found.flightMin;
    better = found.verified && (gains > 0 || !known.verified) ? found : null;
  } catch {
    // The known order stands.
  }
  if (state.orders?.plan === known.plan) set({ orders: { ...known, better, asking: false } });
}

async function accept(plan) {
  try {
    await post('order/accept', { plan });
    set({ orders: { accepted: true } });
    news();
    stock();
  } catch (failed) {
    set({ orders: { failed: failed.status ? failed.message : t('orders.offline') } });
  }
}

/** More than planned, or less. */
const signed = (minutes) => (minutes > 0 ? `+${minutes}` : `${minutes}`.replace('-', '\u2212'));

const money = (cents) => (cents / 100).toFixed(2).replace('-', '\u2212');

const costs = ({ fromAt, moreCents, restCents, currency }) => t(moreCents === null ? 'orders.rest' : 'orders.costs', {
  more: moreCents === null ? '' : money(moreCents), rest: money(restCents), currency, from: clock(fromAt) });

/** Loads that stay behind for the same reason are told together. */
const byReason = (all) => [...new Set(all.map((one) => one.message))].map((message) => [message, all.filter((one) => one.message === message).map((one) => one.load)]);

const offer = (one) => html`<section class="order" aria-label=${t('orders.title')}>
  <h3>${t('orders.because')}</h3>${one.because.length ? html`<ul>${one.because.map((words) => html`<li>${said(words)}</li>`)}</ul>` : html`<p>${t('orders.nothing')}</p>`}
  <h3>${t('orders.differences')}</h3>${one.differences.length ? html`<ol>${one.differences.map((words) => html`<li>${said(words)}</li>`)}</ol>` : html`<p>${t('orders.same')}</p>`}
  <p><b>${t('orders.sums', { flight: signed(one.flightMin), finish: signed(one.finishMin) })}</b></p>
  <p>${costs(one.costs)}</p>
  ${one.leftOut.length ? html`<ul class="caution">${byReason(one.leftOut).map(([message, loads]) => html`<li>${loads.join(', ')}: ${said(message)}</li>`)}</ul>` : nothing}
  ${one.unhooked.length ? html`<div class="missing"><b>${t('orders.unhooked')}</b><ul>${one.unhooked.map((words) => html`<li>${said(words)}</li>`)}</ul></div>` : nothing}
  ${one.verified ? html`<div class="grid two"><button class="big main" @click=${() => accept(one.plan)}>${t('orders.accept')}</button><button class="big" @click=${() => set({ orders: null })}>${t('orders.not')}</button></div>`
    : html`<p class="missing">${t('orders.refused')} </p><ul class="missing">${one.violations.map((words) => html`<li>${said(words)}</li>`)}</ul>`}</section>`;

export const orders = () => html`<h2>${t('orders.title')}</h2><p>${t('orders.hint')}</p>
  ${state.orders?.asking ? html`<p>${t('orders.asking')}</p>` : html`<div class="grid two"><button class="big" ?disabled=${!state.online} @click=${() => ask(false)}>${t('orders.ask')}</button>
    ${state.day.bias?.meanRatio > 1 ? html`<button class="big" ?disabled=${!state.online} @click=${() => ask(true)}>${t('orders.heavier', { ratio: state.day.bias.meanRatio.toFixed(2), count: state.day.bias.count })}</button>` : nothing}</div>`}
  ${state.orders?.failed ? html`<p class="missing">${said(state.orders.failed)}</p>` : nothing}
  ${state.orders?.accepted ? html`<p class="caution">${t('orders.accepted')}</p>` : nothing}
  ${state.orders?.plan ? offer(state.orders) : nothing}
  ${state.orders?.better ? html`<p>${t('orders.better', { flight: signed(state.orders.better.flightMin), finish: signed(state.orders.better.finishMin) })} ${costs(state.orders.better.costs)}</p>
    <button class="big" @click=${() => set({ orders: state.orders.better })}>${t('orders.show')}</button>` : nothing}`;
