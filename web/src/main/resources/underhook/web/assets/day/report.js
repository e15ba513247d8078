// Telling the others what has changed. What is told stands in the log like every tap.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state, tap } from './state.js';
import { deliver } from './link.js';
import { t } from './words.js';
import { bearing, clock, length, lengthUnit, local, mass, massUnit, mostTyped, north, trueDegrees, wholeKg, wholeM } from './units.js';
import { orders } from './orders.js';

const KINDS = {
  wind: { fields: [['from', 'degrees'], ['mean', 'number'], ['gust', 'number']], note: (f) => `wind ${trueDegrees(f.from)} ${f.mean} ${f.gust}` },
  late: { fields: [['crew', 'crew'], ['min', 'number']], note: (f) => `late ${f.crew} ${f.min}` },
  here: { fields: [['crew', 'crew'], ['place', 'place']], note: (f) => `here ${f.crew} ${f.place}` },
  heavy: { fields: [['load', 'load'], ['kg', 'kg']], note: (f) => `heavy ${f.load} ${wholeKg(f.kg, 'up')}`, loads: (f) => [f.load] },
  closed: { fields: [['place', 'place']], note: (f) => `closed ${f.place}` },
  moved: { fields: [['place', 'place'], ['towards', 'degrees'], ['metres', 'metres'], ['clear', 'clear']], note: (f) => `moved ${f.place} ${trueDegrees(f.towards)} ${wholeM(f.metres, 'near')} ${wholeM(f.clear, 'down')}` },
  stands: { fields: [['place', 'place'], ['towards', 'degrees'], ['metres', 'metres'], ['height', 'metres']], note: (f) => `stands ${f.place} ${trueDegrees(f.towards)} ${wholeM(f.metres, 'near')} ${wholeM(f.height, 'up')}` },
  missing: { fields: [['load', 'load']], note: (f) => `missing ${f.load}`, loads: (f) => [f.load] },
  early: { fields: [['min', 'number']], note: (f) => `early ${f.min}` },
  other: { fields: [['words', 'text']], note: (f) => `other ${f.words}` },
};

const choices = { crew: () => state.day.crews.map((one) => one.id), place: () => state.day.places.map((one) => one.id), load: () => state.day.lifts.flatMap((lift) => lift.loads.map((load) => load.id)) };

// As far as the server reads them.
const LARGEST = { degrees: 360, metres: 500, clear: 999, number: 999, kg: 99999 };

const largest = (type) => (type === 'degrees' || type === 'number' ? LARGEST[type] : mostTyped(LARGEST[type], type));

const field = ([name, type]) => html`<label class="field">${t(`report.${name}`, { mass: massUnit(), length: lengthUnit(), north: north() })} ${choices[type] ? html`<select name=${name} required>${choices[type]().map((one) => html`<option ?selected=${one === (type === 'place' ? state.me.place : type === 'crew' ? state.me.crew : null)}>${one}</option>`)}</select>`
  : html`<input name=${name} required type=${type in LARGEST ? 'number' : 'text'} inputmode=${type in LARGEST ? 'numeric' : 'text'} min=${type === 'metres' ? 1 : 0} max=${type in LARGEST ? largest(type) : nothing} step="1" maxlength="200" autocomplete="off">`}</label>`;

async function send(event, kind) {
  event.preventDefault();
  const said = Object.fromEntries(new FormData(event.target));
  await tap('reported', { note: kind.note(said), loads: kind.loads?.(said) ?? [], place: said.place ?? state.me.place ?? '', anyway: true });
  event.target.reset();
  deliver();
}

export const report = () => html`<h1>${t('report.title')}</h1>${orders()}
  ${Object.entries(KINDS).map(([name, kind]) => html`<details><summary>${name !== 'wind' ? t(`report.${name}`) : state.me.place ? `${t('report.wind')} (${state.me.place})` : t('report.windAt')}</summary><form @submit=${(event) => send(event, kind)}>
    ${name === 'moved' || name === 'stands' ? html`<p>${t(`report.${name}Hint`)}</p>` : nothing}<div class="fields">${(name === 'wind' && !state.me.place ? [['place', 'place'], ...kind.fields] : kind.fields).map(field)}</div><button class="big">${t('report.send')}</button></form></details>`)}
  <h2>${t('report.told')}</h2>${told()}`;

/** What was told, in words; as it was written where it has none of the forms. */
function inWords({ note, place }) {
  const [word, ...parts] = note.split(' ');
  if (word === 'stood') return t('told.stood', { from: clock(parts[0]), to: clock(parts[1] ?? '') });
  const fields = KINDS[word]?.fields;
  if (word === 'other' || fields?.length !== parts.length) return word === 'other' ? parts.join(' ') : note;
  const values = Object.fromEntries(fields.map(([name, type], i) => [name, SHOWN[type]?.(Number(parts[i])) ?? parts[i]]));
  return t(`told.${word}`, { place, ...values });
}

/** What was tapped, in words: of a report what it tells. */
export const tapped = (one) => (one.kind === 'reported' ? `${t('kind.reported')}: ${inWords(one)}` : t(`kind.${one.kind}`));

const SHOWN = { degrees: bearing, kg: (value) => mass(value, 'up'), metres: (value) => length(value), clear: (value) => length(value, 'down') };

const told = () => {
  const all = [...state.waiting, ...state.sent].map((entry) => entry.tap).concat(state.day.taps).filter((one, i, every) => one.kind === 'reported' && every.findIndex((other) => other.id === one.id) === i);
  return all.length ? html`<ul>${all.map((one) => html`<li class=${one.takenBack ? 'back' : ''}>${local(one.at)} ${one.by}: ${inWords(one)}${one.takenBack ? ` (${t('mark.back')})` : nothing}</li>`)}</ul>` : html`<p>${t('report.none')}</p>`;
};
