// The worst case: everything here was fetched beforehand. What nobody stated is said to be missing.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state, now } from './state.js';
import { t } from './words.js';
import { choose, placeOf } from './crew.js';
import { length, local } from './units.js';

// The sheet names every wire as near as this.
const WIRES_M = 300;

const missing = (words) => html`<p class="missing">${words}</p>`;

const spot = (text) => html`<p class="position">${text.split('  ').map((half) => html`<span>${half}</span>`)}</p>`;

const number = (one) => html`<li><b>${one.who}</b> <a class="button big" href=${`tel:${one.number.replace(/[^0-9+*#]/g, '')}`}>${one.number}</a> ${one.say || one.how || nothing}</li>`;

const wire = (one, sheet) => {
  const stated = sheet.isolations.filter((isolation) => isolation.line === one.id);
  return html`<li><p><b>${t('em.wire', { id: one.id, kv: one.kv > 0 ? t('em.kv', { kv: one.kv }) : t('em.nokv'), live: t(one.live ? 'em.live' : 'em.dead'), length: length(one.distanceM, 'down') })}</b></p>
    ${stated.length ? html`<ul>${stated.map(number)}</ul>` : missing(t('em.noisolation', { line: one.id }))}</li>`;
};

const overdue = (sheet) => {
  const last = state.day?.taps?.[0]?.at ?? null;
  const quietS = sheet.quietS == null || !last ? null : Math.max(0, Math.floor((now() - Date.parse(last)) / 1000));
  return html`${sheet.overdueS == null ? missing(t('em.nooverdue')) : html`<p>${sheet.overdue || (quietS > sheet.overdueS && state.day?.standing.inTheAir) ? html`<b class="never">${t('em.overdue')}</b> ` : nothing}${t('em.overdueAfter', { min: sheet.overdueS / 60 })}</p>`}
    ${quietS == null ? nothing : html`<p>${t('em.quiet', { min: Math.floor(quietS / 60) })}</p>`}`;
};

export function emergency() {
  const sheet = state.emergency?.sheets.find((one) => one.place === placeOf());
  if (!sheet) return state.day ? choose('emergency') : html`<p>${t('wait')}</p>`;
  const { positions } = sheet;
  return html`<h1>${t('em.title', { place: `${sheet.place} ${sheet.name}` })}</h1>
  <h2>${t('em.position')}</h2>${spot(positions.minutes)}${spot(positions.degrees)}
  ${positions.grid ? html`${spot(positions.grid)}<p>${t('em.grid', { system: positions.system })}</p>` : missing(t('em.nogrid'))}<p>WGS 84</p>
  <h2>${t('em.call')}</h2>${sheet.calls.length ? html`<ol class="calls">${sheet.calls.map(number)}</ol>` : missing(t('em.nocall'))}
  <h2>${t('em.isolation')}</h2>${sheet.wires.length ? html`<ul class="calls">${sheet.wires.map((one) => wire(one, sheet))}</ul>` : html`<p>${t('em.nowire', { length: length(WIRES_M, 'down') })}</p>`}
  <h2>${t('em.landing')}</h2>${sheet.landing ? html`<p><b>${t('em.landingAt', { place: `${sheet.landing.place} ${sheet.landing.name}`.trim(), length: length(sheet.landing.distanceM) })}</b></p>${sheet.landing.stated ? nothing : missing(t('em.unstated'))}` : missing(t('em.nolanding'))}
  <h2>${t('em.count')}</h2>${sheet.people.length ? sheet.people.map((one) => html`<p>${t('em.planned', one)}</p>`) : html`<p>${t('em.nobody')}</p>`}
  ${(sheet.coming ?? []).map((one) => html`<p>${t('em.coming', { ...one, time: local(one.expectedAt, false) })}</p>`)}
  <p>${sheet.counted ? t('em.counted', { who: sheet.counted.by, count: sheet.counted.people ?? 0, time: local(sheet.counted.at, false) }) : t('em.notcounted')}</p>
  ${overdue(sheet)}
  <p><a class="button" href="#emergency/-">${t('em.places')}</a></p><p class="hint">${t('em.asOf', { time: local(state.emergency.now) })}</p>`;
}
