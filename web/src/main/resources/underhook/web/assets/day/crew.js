// What a crew must know of its own place: short, still, and there without network.
import { html, nothing, svg } from '/lib/lit/lit-html.js';
import { state, tap, foreseen, now } from './state.js';
import { deliver } from './link.js';
import { good } from './loader.js';
import { plainly, t } from './words.js';
import { signals } from './signals.js';
import { dangerous, told } from './marks.js';
import { bearing, clock, length, line, local, mass, north, pull, turned } from './units.js';


const placeOf = () => state.at.split('/')[1] || state.me?.place;

const choose = (page) => html`<h1>${t('crew.choose')}</h1><div class="grid two">${state.day.places.map((place) => html`<a class="button big" href=${`#${page}/${place.id}`}>${place.id}<small>${place.name}</small></a>`)}</div>`;

const named = (load) => `${load.id} ${load.kind} ${mass(load.listedKg, 'up')}${load.estimated ? ` ${t('loader.est')}` : ''}${dangerous(load)}`;

const loads = (lift) => lift.loads.map(named).join(' + ');

/** The one load of a lift that is set down here. */
const down = (lift) => lift.loads.filter((load) => load.id === lift.load).map(named).join('');

const comes = (seen) => {
  const [first, ...rest] = seen.comes.filter((one) => foreseen().lifts.find((lift) => lift.number === one.number)?.state !== 'done');
  if (!first) return html`<p>${t('crew.nothing')}</p>`;
  return html`<section class="nextload"><p class="when">${t('crew.about', { time: clock(first.downAt) })}</p><p><b>${down(first)}</b></p>
    <p>${t('pilot.line', { line: line(first.lineM) })} · ${t('crew.from', { in: bearing(first.approachFromTrueDeg), out: bearing(first.departureTrackTrueDeg) })}</p></section>
    ${rest.length ? html`<h3>${t('crew.then')}</h3><ul>${rest.map((one) => html`<li>${t('crew.about', { time: clock(one.downAt) })}: ${down(one)}</li>`)}</ul>` : nothing}`;
};

const goes = (seen) => (seen.goes.length ? html`<h2>${t('crew.goes')}</h2><ul>${seen.goes.slice(0, 6).map((one) => html`<li>${t('crew.about', { time: clock(one.expectedAt) })}: ${loads(one)} ${t('loader.to', { place: one.drops.map((drop) => drop.place).join(', ') })}</li>`)}</ul>` : nothing);

const guySketch = (pole) => svg`<svg class="guys" viewBox="0 0 260 260" role="img" aria-label=${t('crew.guys')}><text x="130" y="16">N ${north()}</text><circle cx="130" cy="130" r="9"/>
  ${pole.guys.map((guy, i) => svg`<g transform=${`rotate(${turned(guy.azimuthTrueDeg)} 130 130)`}><path class=${guy.byHand ? 'hand' : 'belay'} d="M130 121V50"/><path class="anchor" d="M120 50H140"/></g>
    <text class="number" x=${130 + 96 * Math.sin((turned(guy.azimuthTrueDeg) * Math.PI) / 180)} y=${137 - 96 * Math.cos((turned(guy.azimuthTrueDeg) * Math.PI) / 180)}>${i + 1}</text>`)}</svg>`;

const guys = (seen) => seen.poles.map((pole) => html`<h2>${t('crew.guys')}: ${pole.load}, ${mass(pole.massKg, 'up')}</h2><div class="pole">${guySketch(pole)}<ol>${pole.guys.map((guy) => html`<li><b>${guy.who ?? t('crew.nobody')}</b> ${t('crew.guy', { azimuth: bearing(guy.azimuthTrueDeg), length: length(guy.anchorM) })}<br><b>${t(guy.byHand ? 'crew.hand' : 'crew.belay')}</b>, ${t('crew.pull', { pull: pull(guy.worstN) })}</li>`)}</ol></div>
  <p><b>${pole.signals ? t('crew.leads', { who: pole.signals }) : t('crew.nolead')}</b></p><p class="hint">${t('crew.guysHint', { kt: pole.gustKt, deg: pole.leanDeg })}</p>`);

const briefing = (seen) => {
  const here = seen.stays.map((stay) => stay.crew);
  const people = state.day.crews.filter((crew) => here.includes(crew.id) || crew.id === state.me?.crew).flatMap((crew) => crew.people);
  const waiting = [...state.sent, ...state.waiting].filter((entry) => entry.tap.kind === 'briefed').map((entry) => entry.tap.by);
  const done = new Set([...seen.briefed, ...waiting]);
  return html`<h2>${t('crew.brief')}</h2><ol class="brief">${t('crew.briefList').split('|').map((item) => html`<li>${item}</li>`)}</ol>
    <div class="grid two">${people.map((who) => (done.has(who) ? html`<p class="ticked">✓ ${t('crew.ticked', { who })}</p>` : html`<button class="big" data-brief=${who} @click=${async () => { await tap('briefed', { by: who, place: seen.place, note: seen.planId }); deliver(); }}>${t('crew.tick', { who })}</button>`))}</div>`;
};

/** Saying where the own crew is: the next order begins from there, whatever was planned. */
const weAre = () => {
  const crew = state.me?.crew;
  if (!crew) return nothing;
  const said = (state.day.said ?? []).find((one) => one.crew === crew);
  const mine = good().find((one) => one.kind === 'reported' && one.note.startsWith(`here ${crew} `));
  const waits = mine && !state.day.taps.some((one) => one.id === mine.id);
  const send = async (event) => {
    event.preventDefault();
    const place = new FormData(event.target).get('place');
    await tap('reported', { note: `here ${crew} ${place}`, place, anyway: true });
    deliver();
  };
  return html`<form id="here" @submit=${send}><label class="field">${t('crew.weAre', { crew })} <select name="place" required>${state.day.places.map((one) => html`<option value=${one.id} ?selected=${one.id === placeOf()}>${one.id} ${one.name}</option>`)}</select></label><button class="big">${t('crew.weAreSend')}</button></form>
    ${waits ? html`<p class="caution">${t('crew.saidWaits', { place: mine.note.split(' ')[2] })}</p>` : said ? html`<p class=${said.planned || said.ahead ? 'hint' : 'caution'}>${t(said.planned ? 'crew.saidPlanned' : said.ahead ? 'crew.saidAhead' : 'crew.said', { place: said.place, time: clock(said.at) })}</p>` : nothing}
    ${mine ? html`<p><button id="nothere" @click=${async () => { await tap('undone', { undoes: mine.id, anyway: true }); deliver(); }}>${t('crew.notThere', { place: mine.note.split(' ')[2] })}</button></p>` : nothing}`;
};

/** Nothing planned ends it: it lasts into another day. */
const isOpen = (way) => way.fromAt.slice(0, 10) !== way.toAt.slice(0, 10);

/** Where the own crew is to be now and next: it may be told by a new order alone. */
const ownWay = () => {
  const crew = state.me?.crew;
  const ways = (state.day.ways ?? []).filter((way) => way.crew === crew && Date.parse(way.toAt) > now()).slice(0, 3);
  return ways.length ? html`<section class="ownway"><h2>${t('crew.way', { crew })}</h2><ol>${ways.map((way) => html`<li>${isOpen(way) ? t('crew.on', { time: clock(way.fromAt) }) : `${clock(way.fromAt)}–${clock(way.toAt)}`} <b>${way.place}</b> ${plainly(way.doing)}</li>`)}</ol>
    ${ways.some((way) => way.place !== placeOf()) ? html`<p>${[...new Set(ways.map((way) => way.place))].filter((place) => place !== placeOf()).map((place) => html`<a class="button" href=${`#crew/${place}`}>${t('crew.openPlace', { place })}</a> `)}</p>` : nothing}</section>` : nothing;
};

const headCount = (seen) => {
  const crew = state.day.crews.find((one) => one.id === state.me?.crew);
  return crew ? html`<h2>${t('crew.count')}</h2><button class="big" @click=${async () => { await tap('counted', { people: crew.people.length, place: seen.place }); deliver(); }}>${t('crew.all', { count: crew.people.length })}</button>` : nothing;
};

/** Who has no role handles nothing: what comes, comes to the place. */
const onlyStands = () => state.day.crews.find((one) => one.id === state.me?.crew)?.roles.length === 0;

export function crew() {
  const seen = state.places.find((one) => one.place === placeOf());
  if (!seen) return choose('crew');
  return html`<h1>${seen.place} ${seen.name}</h1>${seen.remarks ? html`<p>${seen.remarks}</p>` : nothing}
  ${told(seen.told)}<h2>${t(onlyStands() ? 'crew.nextHere' : 'crew.next')}</h2>${onlyStands() ? html`<p class="caution">${t('crew.noRole')}</p>` : nothing}${comes(seen)}${goes(seen)}
  ${ownWay()}${weAre()}
  ${guys(seen)}
  <h2>${t('crew.where')}</h2><p class="never">${t('crew.whereWords')}</p><p>${t('crew.keepOff', { length: length(seen.keepOffM, 'up') })} ${seen.downwashKt == null ? nothing : t('crew.wash', { kt: seen.downwashKt })} ${t('crew.touch')}</p>
  <h2>${t('crew.free')}</h2><p>${t('crew.freeWords')}</p>
  <h2>${t('crew.signals')}</h2><p>${t('crew.agree')}</p>${signals()}
  ${briefing(seen)}${headCount(seen)}
  ${seen.stays.length ? html`<h2>${t('crew.here')}</h2><ul>${seen.stays.map((stay) => html`<li>${t('crew.stay', { crew: stay.crew, people: stay.people, from: clock(stay.fromAt), to: clock(stay.toAt), doing: plainly(stay.doing) })}</li>`)}</ul>` : nothing}
  <p><a class="button big" href=${`#emergency/${seen.place}`}>${t('crew.emergency', { place: seen.place })}</a> <a class="button" href="#crew/-">${t('em.places')}</a></p>
  <p class="hint">${t('crew.kept', { planned: clock(seen.plannedAt), time: state.stockedAt ? local(new Date(state.stockedAt + state.shiftMs).toISOString(), false) : '–' })}</p>`;
}

export { choose, placeOf };
