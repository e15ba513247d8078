// One look between two lifts. Nothing here moves, sounds or asks; a tap is never needed.
import { html, nothing } from '/lib/lit/lit-html.js';
import { foreseen, state, tap } from './state.js';
import { deliver } from './link.js';
import { good, isStill, refusedOnes } from './loader.js';
import { said, t } from './words.js';
import { badge, before, compass, hangs, heavier, rope, told } from './marks.js';
import { offsetAt, offsetIn } from '../offsets.js';
import { bearing, clock, distance, length, line, local, mass, stretch, until, us } from './units.js';

const SOON_S = 30 * 60;

const figure = (name, value, more) => html`<div class="figure"><dt>${name}</dt><dd>${value}${more ? html`<small>${more}</small>` : nothing}</dd></div>`;

const judged = (kind, about) => badge(kind, `${t(about)}: ${t(`state.${kind}`)}`);

const stopState = (stop) => {
  if (!stop.known) return 'unknown';
  if (!stop.at) return 'inside';
  const { s } = until(stop.at);
  return s <= 0 ? 'outside' : s < SOON_S ? 'near' : 'inside';
};

const left = (stop) => (stop.at ? (until(stop.at).s <= 0 ? t('pilot.passed') : until(stop.at).text) : '–');

const stopsFirst = () => {
  const [first] = state.day.stops ?? [];
  return first ? html`<section class="stops" aria-label=${t('pilot.first')}><div class=${`first ${stopState(first)}`}>${badge(stopState(first), `${t('pilot.first')}: ${t(`stop.${first.what}`)}`)}
    <b class="count">${left(first)}</b><span>${first.at ? clock(first.at) : nothing} ${said(first.words)}</span></div></section>` : nothing;
};

const stopsNext = () => {
  const [, ...rest] = state.day.stops ?? [];
  return html`<section class="stops" aria-label=${t('pilot.stops')}><ul>${rest.map((stop) => html`<li>${badge(stopState(stop), t(`stop.${stop.what}`))} <b>${left(stop)}</b> <span>${stop.at ? clock(stop.at) : nothing} ${said(stop.words)}</span></li>`)}</ul></section>`;
};

const wind = (way) => html`${t('pilot.windOf', { from: bearing(way.windFromTrueDeg), mean: way.windKt, gust: way.gustKt })}<small>${way.reportedAt ? t('pilot.reported', { time: clock(way.reportedAt) }) : t('pilot.forecast')}</small>`;

const side = (way) => `${way.headKt >= 0 ? t('pilot.head', { kt: way.headKt }) : t('pilot.tail', { kt: -way.headKt })}, ${t(way.crossKt === 0 ? 'pilot.cross0' : way.crossKt > 0 ? 'pilot.crossR' : 'pilot.crossL', { kt: Math.abs(way.crossKt) })}`;

/** In feet as the altimeter has it, in metres before it where the reader wants them. */
const altitude = (one) => {
  if (one.hookAltitudeAmslM == null) return ['–'];
  const feet = t('pilot.amslFt', { ft: one.hookAltitudeAmslFt });
  return us() ? [feet] : [t('pilot.amsl', { m: one.hookAltitudeAmslM }), feet];
};

const wayIn = (status, more = nothing) => html`<div class="figure judged"><dt class="sr">${t('pilot.way')}</dt><dd>${judged(status, 'pilot.way')} ${more}</dd></div>`;

const drop = (one) => html`${told(one.told)}<section class="drop">${compass(one)}<dl>
  ${figure(t('pilot.place'), one.place, one.name)}${figure(t('pilot.bearing'), bearing(one.bearingTrueDeg))}${figure(t('pilot.distance'), distance(one.distanceM))}
  ${figure(t('pilot.altitude'), ...altitude(one))}
  ${figure(t('pilot.in'), bearing(one.approachFromTrueDeg), one.way ? side(one.way) : nothing)}
  ${figure(t('pilot.out'), bearing(one.departureTrackTrueDeg), one.way ? t(one.way.tailOutKt > 0 ? 'pilot.outTail' : 'pilot.outHead', { kt: Math.abs(one.way.tailOutKt) }) : nothing)}
  ${figure(t('pilot.wind'), one.way ? wind(one.way) : t('pilot.nowind'))}
  ${one.way ? wayIn(one.way.state, one.way.state === 'outside' ? html`<b>${t(one.told.length ? 'pilot.wayTold' : 'pilot.wayOutside')}</b>` : nothing) : nothing}</dl></section>`;

const onePerPlace = (drops) => drops.filter((one, i, all) => all.findIndex((other) => other.place === one.place) === i);

/** What hangs now and where it is flown to: as soon as it is hooked the rest of the page tells of the lift after it. */
const hanging = (one) => html`<section class="hanging" aria-label=${t('pilot.hanging')}><h2>${t('pilot.hanging')}: ${one.lift} <b>${one.drops.map((drop) => drop.load).join(' + ')}</b> ${t('loader.to', { place: onePerPlace(one.drops).map((drop) => drop.place).join(', ') })}</h2>
  ${onePerPlace(one.drops).map((drop) => html`<dl>${figure(t('pilot.place'), drop.place, drop.name)}${figure(t('pilot.bearing'), bearing(drop.bearingTrueDeg))}${figure(t('pilot.distance'), distance(drop.distanceM))}${figure(t('pilot.altitude'), ...altitude(drop))}
    ${figure(t('pilot.in'), bearing(drop.approachFromTrueDeg), drop.way ? side(drop.way) : nothing)}${figure(t('pilot.out'), bearing(drop.departureTrackTrueDeg))}${figure(t('pilot.wind'), drop.way ? wind(drop.way) : t('pilot.nowind'))}
    ${drop.way ? wayIn(drop.way.state) : nothing}</dl>`)}${passes(one, `${t('pilot.hanging')}: ${t('pilot.passes')}`)}</section>`;

/** A stretch without a spot is told in seconds from here on, as on the card. */
const TOLD_FROM_S = 10;

/** What was told of where it is flown to, since the plan. */
const flownTo = (lift) => (lift.told?.length ? html`<div class="missing"><b>${badge('outside', `${lift.loads.map((load) => load.id).join(' + ')}: ${t('told.title')}`)}</b><ul>${lift.told.map((one) => html`<li>${said(one)}</li>`)}</ul></div>` : nothing);

const passed = (leg) => html`<li><b>${t(leg.loaded ? 'pilot.legLoaded' : 'pilot.legEmpty', { from: leg.from, to: leg.to })}</b> ${leg.courses?.length ? html`<span><b>${t('pilot.bent')}</b> ${leg.courses.map((one) => `${bearing(one.bearingTrueDeg)} ${distance(one.distanceM)}`).join(', ')}.</span> ` : nothing}
  ${leg.passes.map((one) => html`<span>${one.live ? html`<b>${t('pilot.live', { id: one.id })}</b>` : one.id}${one.rule ? html`: ${said(one.rule)}` : nothing}.</span> `)}
  ${leg.roundEnds.map((one) => html`<span><b>${t('pilot.roundEnd', { wire: one.wire, beyond: length(one.beyondM, 'down') })}</b> ${t('pilot.goesOn')}</span> `)}
  ${leg.closed.map((one) => html`<span><b>${t('pilot.notOver', { what: one.what })}</b> ${stretch(one.fromM, one.toM)}.</span> `)}${leg.closedS > TOLD_FROM_S ? html`<span>${t('pilot.closedS', { s: leg.closedS })}</span>` : nothing}</li>`;

/** What the way there and back passes, and where nothing may be let go. */
const passes = (look, named = t('pilot.passes')) => {
  const legs = look.legs.filter((leg) => leg.courses?.length || leg.passes.length || leg.roundEnds.length || leg.closed.length);
  return legs.length ? html`<section class="passes" aria-label=${named}><h2>${t('pilot.passes')}</h2><ul>${legs.map(passed)}</ul></section>` : nothing;
};

/** The day's time with the offset that holds then, of an hour that is there twice the first; where the browser does not know the zone, that of the lifts' own times. */
const onDay = (time) => {
  const { date, zone, offsets, lifts } = state.day;
  const timed = (offset) => `${date}T${time}${offset}`;
  return timed((offsets ?? []).map((one) => (one === 'Z' ? '+00:00' : one)).find((one) => offsetAt(zone, Date.parse(timed(one))) === one) ?? offsetIn(lifts[0].plannedAt));
};

async function engineOff(event) {
  event.preventDefault();
  const form = event.target;
  const { from, to } = Object.fromEntries(new FormData(form));
  // A claim about what is over, no fact that was just seen: the server judges it, with network or later.
  await tap('reported', { note: `stood ${onDay(from)} ${onDay(to)}`, anyway: false });
  typed = { from: '', to: '' };
  form.reset();
  deliver();
}

async function takeBack(one) {
  await tap('undone', { undoes: one.id, anyway: true });
  deliver();
}

const times = (one) => ({ from: clock(one.note.split(' ')[1]), to: clock(one.note.split(' ')[2]) });

const isStop = (one) => one.kind === 'reported' && one.note.startsWith('stood ');

/** Once told it counts, waits on this device, or was spoken against by what was tapped elsewhere. */
const toldStop = (one) => {
  const against = state.day.conflicts.find((conflict) => conflict.tap.id === one.id);
  return html`<li><p><b>${t('told.stood', times(one))}</b>${state.waiting.some((entry) => entry.tap.id === one.id) ? ` · ${t('mark.waits')}` : nothing}</p>
    ${against ? html`<p>${badge('outside', t('pilot.stood.not'))} ${said(against.why.message)}</p>` : nothing}${state.me ? html`<button @click=${() => takeBack(one)}>${t('conflict.back')}</button>` : nothing}</li>`;
};

/** Once something was told the form stays open: what was refused is put right and told again. */
let open = false;
let typed = { from: '', to: '' };

/** A stop of the engine that nobody tapped: told afterwards it counts as if it had been tapped then. */
const forgotten = () => {
  const told = good().filter(isStop);
  open ||= told.length > 0 || state.waiting.some((entry) => isStop(entry.tap));
  const refused = state.waiting.findLast((entry) => entry.refused && isStop(entry.tap));
  if (refused) typed = times(refused.tap);
  return html`<details class="stood" ?open=${open}><summary>${t('pilot.stood')}</summary><p>${t('pilot.stoodHint')}</p>${refusedOnes(isStop)}${state.me ? html`<form id="stood" @submit=${engineOff}><div class="fields">
    ${['from', 'to'].map((name) => html`<label class="field">${t(`pilot.stood.${name}`)} <input type="time" name=${name} value=${refused ? '' : typed[name]} required></label>`)}</div><button class="big">${t('report.send')}</button></form>` : html`<p><a class="button" href="#join">${t('page.join')}</a></p>`}
    <ul ?inert=${!isStill('told', told.map((one) => one.id).join(' '))}>${told.map(toldStop)}</ul></details>`;
};

export function pilot() {
  const { day } = state;
  const look = day.nextLook;
  const now = foreseen();
  const lift = look && day.lifts.find((one) => one.number === look.lift);
  const places = onePerPlace(look?.drops ?? []);
  const hang = day.hanging ?? [];
  return html`<div class="pilot">${state.online ? nothing : html`<p class="caution">${t('pilot.stale', { time: local(day.now, false) })}</p>`}
  ${look && now.next?.number === look.lift ? before(now.before) : nothing}
  ${day.lifts.filter((one) => one.state === 'onHook').map((one) => html`${heavier(one)}${flownTo(one)}`)}${hang.map(hanging)}
  ${lift?.state === 'aborted' ? heavier(lift) : nothing}${look ? html`<header class="head">${rope(day.standing)}<h1>${hang.length ? `${t('pilot.then')} ` : ''}${look.lift} <b>${lift.loads.map((load) => load.id).join(' + ')}</b> ${t('loader.from', { place: lift.from })} ${t('loader.to', { place: places.map((one) => one.place).join(', ') })}</h1>
    <p>${day.standing.lineM === null ? t('line.off') : `${t('line.on')} ${line(day.standing.lineM)}`} · ${t('pilot.line', { line: line(lift.lineM) })} · ${lift.loads.map((load) => load.kind).join(', ')}</p></header>${hangs(day.standing, lift)}
  <dl class="masses">${figure(t('pilot.mass'), mass(look.massOnHookKg, 'up'), look.ballastKg ? t('pilot.ballast', { mass: mass(look.ballastKg, 'up') }) : nothing)}
    ${figure(t('pilot.most'), look.mostFuelKg == null ? html`<b>${t(look.airKnown ? 'pilot.cannot' : 'pilot.noair')}</b>` : mass(look.mostFuelKg, 'down'), html`${t('pilot.planned', { mass: mass(look.plannedMostFuelKg, 'down'), time: clock(look.plannedAt) })}${day.bias?.meanRatio > 1 ? html`<br>${t('pilot.heavier', { mass: look.mostFuelHeavierKg == null ? t(look.airKnown ? 'pilot.cannot' : 'pilot.noair') : mass(look.mostFuelHeavierKg, 'down') })}` : nothing}`)}
    ${figure(t('pilot.leastFuel'), mass(look.leastFuelKg, 'up'), t('pilot.leastWhy'))}
    ${figure(t('pilot.aboard'), look.fuel ? t('pilot.aboardRange', { least: mass(look.fuel.leastKg, 'down'), most: mass(look.fuel.mostKg, 'up') }) : t('pilot.nofuel'), html`${look.fuel ? html`${t('pilot.read', { mass: mass(look.fuel.readKg), time: clock(look.fuel.readAt) })}<br>` : nothing}${judged(!look.airKnown ? 'unknown' : look.fuel ? look.fuelState : look.mostFuelKg == null ? 'outside' : 'unknown', 'pilot.fuel')}`)}</dl>
  ${places.map(drop)}${stopsFirst()}${passes(look)}` : html`<h1>${t('pilot.none')}</h1>${stopsFirst()}`}
  ${stopsNext()}${refusedOnes((one) => !isStop(one))}${day.lifts.length ? forgotten() : nothing}<p class="hint">${t('pilot.asOf', { time: local(day.now) })}</p></div>`;
}
