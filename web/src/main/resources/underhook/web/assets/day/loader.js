// The loader's record: one large field for what comes next, everything else below it.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state, set, tap, entries, foreseen } from './state.js';
import { deliver } from './link.js';
import { only, otherLine, refusal } from './standing.js';
import { tapped } from './report.js';
import { said, t } from './words.js';
import { before, dangerous, hangs, heavier, rope } from './marks.js';
import { clock, line, local, mass, massUnit, typedKg } from './units.js';

const ALL = ['engine-on', 'engine-off', 'take-off', 'landing', 'line-on', 'line-checked', 'line-off', 'people-aboard', 'people-out', 'hooked', 'off', 'free-seen', 'free-confirmed', 'aborted', 'refuelled', 'snagged'];
const ASKED = { 'line-on': 'line', 'people-aboard': 'people', refuelled: 'fuel', landing: 'where' };
const READY = ['line-on', 'line-checked', 'line-off'];
const GAUGE = ['engine-on', 'landing', 'engine-off', 'refuelled'];

// A finger on its way, or pressing twice, must not say the next thing by mistake.
const STILL_MS = 500;
const shown = new Map();
let pressed = '';

/** Whether a place on the page has meant the same for long enough; draws it anew when it has. */
export function isStill(where, meaning) {
  if (shown.get(where)?.meaning !== meaning) {
    shown.set(where, { meaning, since: performance.now() });
    setTimeout(() => set({}), STILL_MS + 20);
  }
  return hasRested(where);
}

const hasRested = (where) => performance.now() - shown.get(where).since >= STILL_MS;

/** What is asked first is no tap. */
const act = (kind, loads) => (kind === 'again' ? set({ ask: 'again' }) : press(kind, { loads }));

/** Makes a tap. Without network this device says itself what will not be allowed. */
async function press(kind, more = {}) {
  // Who stands at a place sees the machine land there.
  if (ASKED[kind] && !more.given && !(kind === 'landing' && state.me.place)) { set({ ask: ASKED[kind], typed: '' }); return; }
  const { given, ...rest } = more;
  const why = state.online || more.anyway ? null : refusal(foreseen(), { kind, by: state.me.by, place: state.me.place, loads: [], ...rest });
  if (why) { set({ ask: 'sure', sure: { kind, rest, why } }); return; }
  // What is only made ready for a lift that was chosen changes no choice.
  set({ ask: null, typed: '', chosen: READY.includes(kind) ? state.chosen : null, as: null });
  await tap(kind, rest);
  navigator.vibrate?.(40);
  deliver();
}

async function undo(id) { await tap('undone', { undoes: id, anyway: true }); deliver(); }

/** Weight and fuel are often read after the tap: it is taken back and made again with them, at its own time. */
async function weigh(last) {
  const massKg = typedKg(state.typed);
  if (!(massKg > 0)) return;
  set({ typed: '', ask: null });
  await tap('undone', { undoes: last.id, anyway: true });
  await tap(last.kind, { at: (last.device === state.me.device && last.deviceAt) || last.at, by: last.by, loads: last.loads, place: last.place, massKg, anyway: true });
  deliver();
}

const loadsOf = (lift) => lift.loads.map((load) => load.id);

/** What a step before the lift is tapped with, as the line hangs now; null where nobody taps it or it is so already. */
const asks = (step, { lineM }) => {
  switch (step.kind) {
    case 'refuel': return 'refuelled';
    case 'crew_move': return lineM === null ? 'people-aboard' : 'line-off';
    case 'line_change':
      if (!step.lineM) return lineM === null ? null : 'line-off';
      return lineM !== null && Math.abs(lineM - step.lineM) < 0.05 ? null : 'line-on';
    default: return null;
  }
};

/** The way to the lift itself, whatever else comes before it: the line on, tried, hooked. */
function toLift({ standing, lifts, next }) {
  if (standing.lineM === null) return { kind: 'line-on', loads: [] };
  const loads = loadsOf(state.chosen ?? next);
  if (otherLine(standing, lifts, loads) !== null) return { kind: 'line-on', loads: [] };
  if (!standing.lineChecked) return { kind: 'line-checked', loads: [] };
  return { kind: 'hooked', loads };
}

/** What was given up hangs on the hook again only after somebody said so: it may weigh what it weighed. */
const decided = (one, next) => (one.kind === 'hooked' && !state.chosen && next.state === 'aborted' ? { ...one, kind: 'again' } : one);

/** What comes next: by the steps before the lift where somebody taps them, and beside it what would lead past them. */
function likely(now) {
  const { standing, next, before: steps } = now;
  const [first] = standing.onHook;
  if (standing.notYetFree.length) return { first: standing.freeSeenBy ? { kind: 'free-confirmed', loads: standing.notYetFree } : { kind: 'free-seen', loads: standing.notYetFree } };
  if (first) return { first: { kind: 'off', loads: [first] } };
  if (standing.peopleAboard) return { first: { kind: 'people-out', loads: [] } };
  if (!next && !state.chosen) return { first: null };
  const past = decided(toLift(now), next);
  // A lift chosen here is flown before those steps.
  const kind = state.chosen ? null : steps.map((step) => asks(step, standing)).find(Boolean);
  return kind && kind !== past.kind ? { first: { kind, loads: [] }, past } : { first: past };
}

const words = (lift) => html`<b>${loadsOf(lift).join(' + ')}</b> ${lift.drops.map((drop) => t('loader.to', { place: drop.place })).filter((one, i, all) => all.indexOf(one) === i).join(', ')}`;

const about = (lift) => html`<p class="about">${t('loader.from', { place: lift.from })} · ${lift.loads.map((load) => `${load.id} ${load.kind}, ${t('loader.listed', { mass: mass(load.listedKg, 'up') })}${load.estimated ? ` ${t('loader.est')}` : ''}${dangerous(load)}`).join(' · ')} · ${t('loader.expected', { time: clock(lift.expectedAt) })}</p>`;

const strip = (standing) => html`<section class="strip" aria-label=${t('line.on')}>${rope(standing)}<div>
  <p class="line">${standing.lineM === null ? t('line.off') : `${t('line.on')} ${line(standing.lineM)}`}</p>
  <p>${standing.lineM === null ? nothing : standing.lineChecked ? t('line.checked') : html`<b class="warn">${t('line.unchecked')}</b>`}</p>
  <p>${t(standing.engineOn ? 'line.engine' : 'line.engineOff')} · ${t(standing.inTheAir ? 'line.air' : 'line.ground')} · ${t('line.aboard', { count: standing.peopleAboard })}</p>
  <p>${standing.onHook.length ? html`<b>${t('line.hook', { loads: standing.onHook.join(', ') })}</b>` : nothing}
  ${standing.notYetFree.length ? html`<b>${t('line.free', { loads: standing.notYetFree.join(', ') })}</b> ${standing.freeSeenBy ? t('line.seen', { who: standing.freeSeenBy }) : nothing}` : nothing}</p></div></section>`;

const pad = (title, done, label) => html`<section class="pad" aria-label=${title}><h2>${title}</h2><output>${state.typed || '0'}</output>
  <div class="keys">${[1, 2, 3, 4, 5, 6, 7, 8, 9, '⌫', 0].map((key) => html`<button @click=${() => set({ typed: key === '⌫' ? state.typed.slice(0, -1) : (state.typed + key).slice(0, 4) })}>${key}</button>`)}
  <button class="main" @click=${done}>${label ?? t('loader.set')}</button></div><button @click=${() => set({ ask: null, typed: '', as: null })}>${t('loader.cancel')}</button></section>`;

const others = () => state.day.crews.flatMap((crew) => crew.people).concat('pilot').filter((who) => who !== state.me.by);

/** The pilot's word on a lift that was given up. */
const again = (lift) => html`<section class="grid" aria-label=${t('loader.again', { loads: loadsOf(lift).join(' + ') })}><h2>${t('loader.again', { loads: loadsOf(lift).join(' + ') })}</h2>${heavier(lift, weighedKg(lift))}<p>${t('loader.againWords')}</p>
  <button class="big" data-again="other" @click=${() => set({ ask: 'lift' })}>${t('loader.other')}</button><a class="button big" href="#report">${t('orders.ask')}</a>
  <button class="big" data-again="same" @click=${() => set({ chosen: lift, ask: null })}>${t('loader.same', { loads: loadsOf(lift).join(' + ') })}</button><button @click=${() => set({ ask: null })}>${t('loader.cancel')}</button></section>`;

const asked = (now) => {
  switch (state.ask) {
    case 'line': return html`<section class="grid" aria-label=${t('loader.line')}><h2>${t('loader.line')}</h2>${state.day.lines.map((one) => html`<button class="big" @click=${() => press('line-on', { given: true, lineM: one.lengthM })}>${line(one.lengthM)}</button>`)}<button @click=${() => set({ ask: null })}>${t('loader.cancel')}</button></section>`;
    case 'people': return pad(t('loader.people'), () => press('people-aboard', { given: true, people: Math.max(1, Number(state.typed) || 1) }));
    case 'fuel': return pad(t('loader.fuel', { unit: massUnit() }), () => press('refuelled', { given: true, ...(state.typed ? { massKg: typedKg(state.typed) } : {}) }));
    case 'where': return html`<section class="grid" aria-label=${t('loader.where')}><h2>${t('loader.where')}</h2>${state.day.places.filter((place) => place.kind !== 'site').map((place) => html`<button class="big" @click=${() => press('landing', { given: true, place: place.id })}>${place.id} ${place.name}</button>`)}<button class="big" @click=${() => press('landing', { given: true })}>${t('loader.elsewhere')}</button><button @click=${() => set({ ask: null })}>${t('loader.cancel')}</button></section>`;
    case 'weight': return pad(weighing(), () => weigh(toWeigh()));
    case 'gauge': return pad(reading(toRead()), () => weigh(toRead()));
    case 'lift': return html`<section class="grid" aria-label=${t('loader.other')}><h2>${t('loader.other')}</h2>${now.lifts.filter((lift) => lift.state === 'waits' || lift.state === 'aborted').flatMap((lift) => [lift, ...(lift.loads.length > 1 ? lift.loads.map((load) => only(lift, [load.id])) : [])]).map((lift) => html`<button class="big left" @click=${() => set({ chosen: lift, ask: null })}>${lift.number}: ${words(lift)}</button>`)}<button @click=${() => set({ ask: null })}>${t('loader.cancel')}</button></section>`;
    case 'again': return now.next?.state === 'aborted' ? again(now.next) : html`<button @click=${() => set({ ask: null })}>${t('loader.cancel')}</button>`;
    case 'as': return html`<section class="grid" aria-label=${t('loader.aswho')}><h2>${t('loader.aswho')}</h2>${others().map((by) => html`<button @click=${() => press('free-confirmed', { by, loads: now.standing.notYetFree })}>${by}</button>`)}<button @click=${() => set({ ask: null })}>${t('loader.cancel')}</button></section>`;
    case 'sure': return html`<section class="refused" role="alert"><h2>${t('refused.title')}: ${t(`kind.${state.sure.kind}`)}</h2><p>${t(`why.${state.sure.why}`)}</p><p>${t('refused.offline')}</p>
      <button class="big" @click=${() => press(state.sure.kind, { ...state.sure.rest, given: true, anyway: true })}>${t('refused.happened')}</button><button class="big main" @click=${() => set({ ask: null })}>${t('loader.cancel')}</button></section>`;
    default: return nothing;
  }
};

const mine = () => [...state.waiting.map((entry) => ({ ...entry.tap, seq: entry.seq, refused: entry.refused, waits: true })).reverse(), ...state.sent.filter((entry) => !state.day?.taps.some((one) => one.id === entry.tap.id)).map((entry) => entry.tap).reverse(), ...(state.day?.taps ?? []).filter((one) => !state.waiting.some((entry) => entry.tap.id === one.id))];
const undone = () => new Set(mine().filter((one) => one.kind === 'undone' && !one.refused).map((one) => one.undoes));
export const good = () => { const gone = undone(); return mine().filter((one) => one.kind !== 'undone' && !one.refused && !one.takenBack && !gone.has(one.id)); };
/** What was last typed for a lift, on this device before the server has it. */
const weighedKg = (lift) => good().find((one) => one.kind === 'hooked' && one.massKg && one.loads.join() === loadsOf(lift).join())?.massKg ?? lift.readKg;
/** What hangs there may be weighed again: a figure is soon typed wrong with gloves. Else what was not weighed yet. */
const toWeigh = () => {
  const hooked = good().filter((one) => one.kind === 'hooked');
  return foreseen().standing.onHook.length ? hooked[0] : hooked.find((one) => !one.massKg);
};

/** Which load it is stands with it: once nothing hangs it may be any of those that were not weighed. */
const weighing = () => `${toWeigh().loads.join(' + ')}: ${t(toWeigh().massKg ? 'loader.weightAgain' : 'loader.weight', { unit: massUnit() })}`;

/** What the gauge may still be read for: while the machine stands it shows what it showed then. */
const toRead = () => {
  if (foreseen().standing.inTheAir) return undefined;
  const last = good().filter((one) => [...GAUGE, 'take-off', 'hooked'].includes(one.kind)).reduce((late, one) => (late && Date.parse(late.at) >= Date.parse(one.at) ? late : one), undefined);
  return GAUGE.includes(last?.kind) ? last : undefined;
};

const reading = (one) => `${t(`kind.${one.kind}`)} ${local(one.at, false)}: ${t(one.massKg ? 'loader.gaugeAgain' : 'loader.gauge', { unit: massUnit() })}`;

/** What the server refused of what was tapped here; of one page's own forms beside them alone. */
export const refusedOnes = (which = () => true) => state.waiting.filter((entry) => entry.refused && which(entry.tap)).map((entry) => html`<section class="refused" role="alert" ?inert=${!isStill(`refused ${entry.seq}`, entry.tap.id)}><h2>${t('refused.title')}: ${tapped(entry.tap)} ${entry.tap.loads.join(', ')}</h2><p>${said(entry.refused.why)}</p>
  ${entry.refused.state === 'refused' && entry.tap.kind !== 'reported' ? html`<button class="big" @click=${async () => { await state.outbox.change({ ...entry, tap: { ...entry.tap, anyway: true }, refused: null }); await entries(); deliver(); }}>${t('refused.happened')}</button>` : nothing}
  <button class="big main" @click=${async () => { await state.outbox.drop(entry.seq); await entries(); }}>${t('refused.drop')}</button></section>`);

const mark = (one) => (one.refused ? 'refused' : one.waits ? 'waits' : one.takenBack || undone().has(one.id) ? 'back' : 'kept');

/** Kept though the day did not allow it. What was weighed, or tapped without network, was kept without asking. */
const isAgainstRules = (one) => state.day?.conflicts.some((conflict) => conflict.tap.id === one.id);

export const tapList = (count) => html`<ol class="taps">${mine().slice(0, count).map((one) => html`<li class=${mark(one)}><span class="knot" aria-hidden="true"></span><span>${local(one.at)}</span> <b>${tapped(one)}</b> ${one.loads.join(' ')} ${one.massKg ? (one.kind === 'hooked' ? t('mark.weighed', { mass: mass(one.massKg) }) : mass(one.massKg)) : ''} ${one.lineM ? line(one.lineM) : ''}
  <small>${one.by} · ${t(`mark.${mark(one)}`)}${isAgainstRules(one) ? ` · ${t('mark.anyway')}` : ''}${one.deviceAt ? ` · ${t('mark.clock', { time: local(one.deviceAt) })}` : ''}</small></li>`)}</ol>`;

export const conflicts = () => (state.day?.conflicts.length ? html`<section class="conflicts" ?inert=${!isStill('conflicts', state.day.conflicts.map(({ tap: one }) => one.id).join(' '))}><h2>${t('conflict.title', { count: state.day.conflicts.length })}</h2><ul>${state.day.conflicts.map(({ tap: one, why, other }) => html`<li>
  <p>${t('conflict.this', { who: one.by, device: one.device, kind: tapped(one), loads: one.loads.join(' '), time: local(one.at) })} ${other ? t('conflict.other', { who: other.by, device: other.device, kind: tapped(other), time: local(other.at) }) : nothing}</p><p>${said(why.message)}</p>
  <button @click=${() => undo(one.id)}>${t('conflict.back')}</button></li>`)}</ul></section>` : nothing);

const huge = (meaning, words, act, kind) => html`<button class="huge main" data-kind=${kind ?? nothing} aria-disabled=${hasRested('page') ? nothing : 'true'}
    @pointerdown=${() => { pressed = meaning; }}
    @click=${(event) => { if (hasRested('page') && (event.detail === 0 || pressed === meaning)) act(); }}>${words}</button>`;

/** What else may be tapped now: a step before the lift where it is not the large field, and what leads past it. */
const due = ({ before: steps, standing }, { first, past }) => {
  const kinds = new Set(steps.filter((step) => step.kind === 'refuel' || step.kind === 'crew_move' && !standing.peopleAboard).map((step) => asks(step, standing)));
  const others = [...kinds].filter((kind) => kind !== first?.kind).map((kind) => ({ kind, loads: [] })).concat(past ?? []);
  return html`<div class="grid two" ?inert=${!hasRested('page')}>${others.map(({ kind, loads }) => html`<button class="big" data-now=${kind} @click=${() => act(kind, loads)}>${t(`kind.${kind}`)}${loads.length ? html`<br>${loads.join(' + ')}` : nothing}</button>`)}</div>`;
};

export function loader() {
  const now = foreseen();
  const next = likely(now);
  const { first, past } = next;
  const lift = now.lifts.find((one) => one.state === 'onHook' || one.state === 'setDown') ?? state.chosen ?? now.next;
  const last = good().find((one) => one.device === state.me.device);
  const alone = first?.kind === 'free-confirmed' && now.standing.freeSeenBy === state.me.by;
  const bias = state.day.bias;
  // What comes first stands above the large field, the rest below it: it must be in reach without scrolling.
  const steps = lift && lift === now.next ? now.before ?? [] : [];
  // When one of these comes or goes, all below it moves under the finger.
  isStill('page', [state.ask, ...state.waiting.filter((entry) => entry.refused).map((entry) => entry.seq), first?.kind, ...first?.loads ?? [], alone, past?.kind, ...past?.loads ?? [], now.before.length].join(' '));
  return html`<h1 class="sr">${t('page.loader')}</h1><div class="now">${strip(now.standing)}${refusedOnes()}
  ${state.ask ? nothing : html`
    ${before(steps.slice(0, 1))}
    ${lift ? html`<p class="lift">${t(lift.state === 'waits' || lift.state === 'aborted' ? 'loader.next' : 'loader.now', { lift: lift.number })}: ${words(lift)}</p>${about(lift)}${hangs(now.standing, lift)}${heavier(lift, weighedKg(lift))}` : html`<p>${t('loader.none')}</p>`}
    ${alone ? html`<p class="caution">${t('loader.second')}</p>${huge(`as ${first.loads}`, t('loader.as'), () => set({ ask: 'as' }), 'as')}`
      : first ? huge(`${first.kind} ${first.loads}`, html`${t(`kind.${first.kind}`)}<br>${first.loads.join(' + ')}`, () => act(first.kind, first.loads), first.kind) : nothing}
    ${due(now, next)}${before(steps.slice(1), t('before.then'))}`}</div>
  <div ?inert=${!hasRested('page')}>${state.ask ? asked(now) : html`
    <div class="grid two">
      ${last ? html`<button class="big" id="undo" ?inert=${!isStill('undo', last.id)} @click=${() => undo(last.id)}>${t('loader.undo', { what: `${tapped(last)} ${last.loads.join(' ')}` })}</button>` : nothing}
      ${toRead() ? html`<button class="big" id="gauge" @click=${() => set({ ask: 'gauge', typed: '' })}>${reading(toRead())}</button>` : nothing}
      ${toWeigh() ? html`<button class="big" id="weigh" @click=${() => set({ ask: 'weight', typed: '' })}>${weighing()}</button>` : nothing}
      ${now.standing.onHook.length ? html`<button class="big" @click=${() => press('aborted')}>${t('kind.aborted')}</button>` : html`<button class="big" @click=${() => set({ ask: 'lift' })}>${t('loader.other')}</button>`}
      <button class="big" @click=${() => press('snagged')}>${t('kind.snagged')}</button>
      <button class="big" aria-expanded=${String(Boolean(state.more))} @click=${() => set({ more: !state.more })}>${t(state.more ? 'loader.less' : 'loader.all')}</button>
    </div>
    ${state.more ? html`<div class="grid two all">${ALL.map((kind) => html`<button class="big" data-all=${kind} @click=${() => press(kind, { loads: kind === 'hooked' && lift ? loadsOf(lift) : kind === 'off' ? now.standing.onHook.slice(0, 1) : [] })}>${t(`kind.${kind}`)}</button>`)}</div>` : nothing}`}</div>
  ${bias ? html`<p class=${bias.meanRatio > 1 ? 'caution' : ''}>${t('loader.bias', { ratio: bias.meanRatio.toFixed(2), count: bias.count, worst: bias.worstRatio.toFixed(2) })}</p>` : nothing}
  ${conflicts()}<h2>${t('loader.last')}</h2>${tapList(state.more ? 30 : 8)}
  ${state.waiting.length ? html`<p class="caution">${t('loader.csvWait')}</p>` : html`<p><a class="button" href=${`/api/jobs/${encodeURIComponent(state.job)}/day/taps.csv`} download>${t('loader.csv')}</a></p>`}`;
}
