// Whole days of the job side by side: as it stands, from other laydowns, with one line alone, with other
// machines. Each is planned and re-checked by the server; nothing is kept, so nothing can be accepted here.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { api } from './api.js';
import { said, t } from './words.js';
import * as u from './units.js';

const isRunning = () => state.waysAt != null;

actions.openWays = async () => {
  actions.open(ways);
  if (isRunning()) return;
  actions.set({ ways: null });
  const found = await actions.attempt(() => api.ways(state.jobId));
  if (found) actions.set({ ways: found });
};

/** One after the other, so that each stands there as soon as it is known. */
async function workOut(kind) {
  const jobId = state.jobId;
  const wanted = state.ways.map((way, n) => n).filter((n) => n === 0 || !kind || state.ways[n].kind === kind);
  for (const n of wanted) {
    if (state.ways[n].known) continue;
    if (state.jobId !== jobId || state.waysAt === -1) break;
    actions.set({ waysAt: n, asking: null });
    const found = await actions.attempt(() => api.workOutWay(jobId, n));
    if (!found) break;
    actions.set({ ways: found });
  }
  actions.set({ waysAt: null });
}

const stop = () => {
  actions.set({ waysAt: -1 });
  return actions.attempt(() => api.stopWays(state.jobId));
};

const KINDS = ['laydown', 'line', 'machine'];

function ways() {
  const all = state.ways;
  if (!all) return html`<h2>${t('ways.title')}</h2><p class="waiting">${t('waiting')}</p>`;
  const kinds = KINDS.filter((kind) => all.some((way) => way.kind === kind));
  return html`<h2>${t('ways.title')}</h2><p class="hint">${t('ways.hint')}</p>
    ${isRunning() ? working() : html`<p class="acts">${kinds.map((kind) => html`<button @click=${() => workOut(kind)}>${t(`ways.${kind}`)}</button>`)}
      ${kinds.length > 1 ? html`<button class="main" @click=${() => workOut()}>${t('ways.all')}</button>` : nothing}</p>`}
    ${kinds.length ? table(all) : html`<p>${t('ways.none')}</p>`}`;
}

const working = () => html`<div class="progress" role="status"><span class="waiting">${said(state.ways[state.waysAt]?.words ?? '')}</span>
  <progress max="1" .value=${state.asking?.fraction ?? 0} aria-label=${t('plan.progress')}></progress> <span>${said(state.asking?.doing ?? '')}</span>
  <button @click=${stop}>${t('plan.stop')}</button></div>`;

const HEADS = ['sum.flight', 'sum.finish', 'sum.price', 'ways.out', 'ways.closed', 'ways.guarded', 'ways.crossed', 'ways.byMinutes', 'ways.byGround'];

const table = (all) => html`<div class="wide ways" tabindex="0" role="region" aria-label=${t('ways.title')}><table><thead><tr><th scope="col">${t('ways.way')}</th>${HEADS.map((head) => html`<th scope="col">${t(head)}</th>`)}</tr></thead>
  <tbody>${all.map((way) => html`<tr class=${way.kind === 'as_stated' ? 'chosen' : ''}><th scope="row">${said(way.words)}${way.asIf.length
    ? html`<br><small>${t('ways.asIf')} ${way.asIf.map((one, n) => html`${n ? '; ' : ''}${said(one)}`)}</small>` : nothing}</th>${cells(way)}</tr>`)}</tbody></table></div>`;

function cells(way) {
  if (!way.known) return html`<td colspan=${HEADS.length}>${t('ways.open')}</td>`;
  const day = way.figures;
  if (!day) return html`<td colspan=${HEADS.length} class="refusal"><div>${said(way.why)}</div></td>`;
  return html`<td class="num">${u.minutes(day.flightMinutes)}${day.cutShort ? html`<br><small>${t('ways.cut')}</small>` : nothing}</td><td class="num">${u.clock(day.finishAt)}</td>
    <td class="num">${u.money(day.totalCents, day.currency)}${day.comfortsCents ? html`<br><small>${t('ways.comforts', { price: u.money(day.comfortsCents, day.currency) })}</small>` : nothing}</td><td class="num">${day.leftOut.length}<br><small>${more(day.leftOut)}</small></td>
    <td class="num">${day.closedSeconds} s</td><td class="num">${day.guardedSeconds} s</td>
    <td>${Object.keys(day.crossings).length ? nothing : '0'}${Object.entries(day.crossings).map(([id, count]) => html`${id} ${count}× `)}</td>
    <td class="num">${way.rankByMinutes ?? ''}</td><td class="num">${way.rankByGround ?? ''}</td>`;
}

/** Those that the job as it stands would take. */
function more(leftOut) {
  const stated = state.ways[0].figures?.leftOut ?? [];
  const id = (one) => one.split(' ')[0];
  return leftOut.filter((one) => !stated.some((other) => id(other) === id(one))).join(', ');
}
