// Who holds this device, where they are, and how they like the page.
import { html, nothing, svg } from '/lib/lit/lit-html.js';
import { state, set } from './state.js';
import { t, LANGUAGES, speak } from './words.js';
import { local } from './units.js';

// A bank card (ID-1 of ISO/IEC 7810); a phone is narrower than its long side.
const LONG_MM = 85.6, SHORT_MM = 53.98;
const cardMm = () => (innerWidth < 12 * LONG_MM ? SHORT_MM : LONG_MM);
const ROLE = { hook: 'loader', refuel: 'loader', receive: 'crew', guy: 'crew' };

const people = () => [
  { by: 'pilot', role: 'pilot', words: t('join.pilot') },
  ...(state.day?.crews ?? []).flatMap((crew) => crew.people.map((by) => ({
    by, crew: crew.id, role: crew.roles.includes('guy') ? 'crew' : ROLE[crew.roles[0]] ?? 'crew', words: by, place: crew.start, language: crew.language,
  }))),
  { by: 'desk', role: 'desk', words: t('join.desk') },
];

const letters = () => [...crypto.getRandomValues(new Uint8Array(3))].map((byte) => 'ABCDEFGHJKLMNPQRSTUVWXYZ'[byte % 24]).join('');

const reader = (change) => { set({ reader: { ...state.reader, ...change } }); speak(state.reader.language); set({}); };

const choose = (person) => {
  set({ me: {
    by: person.by, role: person.role, crew: person.crew ?? null, place: person.place ?? state.me?.place ?? '',
    // The device keeps its name when it changes hands.
    device: state.me?.device ?? `${person.role}-${letters()}`,
  } });
  // Until somebody chooses, it speaks as the papers of their crew do.
  if (person.language && !state.reader.spoken) reader({ language: person.language });
};

const begin = () => { location.hash = state.me.role === 'pilot' ? 'pilot' : state.me.role === 'crew' ? `crew/${state.me.place}` : 'loader'; };

const options = (name, all, value, change) => html`<fieldset><legend>${name}</legend>${Object.entries(all).map(([key, words]) => html`
  <button aria-pressed=${String(key === value)} @click=${() => change(key)}>${words}</button>`)}</fieldset>`;

// The light border that cameras need: ISO/IEC 18004.
const BORDER = 4;

const code = ({ address, rows }) => {
  const side = rows.length + 2 * BORDER;
  const dark = rows.flatMap((row, y) => [...row].map((one, x) => (one === '1' ? `M${x + BORDER} ${y + BORDER}h1v1h-1z` : ''))).join('');
  return html`<figure><svg class="code" viewBox=${`0 0 ${side} ${side}`} role="img" aria-label=${t('join.code', { address })}>${svg`<rect width=${side} height=${side} fill="#fff"/><path d=${dark} fill="#000" shape-rendering="crispEdges"/>`}</svg><figcaption>${address}</figcaption></figure>`;
};

const others = () => html`<h2>${t('join.others')}</h2>${state.addresses.length ? html`<p>${t('join.othersHint')}</p><div class="codes">${state.addresses.map(code)}</div>` : html`<p>${t('join.alone')}</p>`}`;

export const join = () => html`<h1>${t('join.title')}</h1>
  ${state.day ? html`
  <div class="grid two">${people().map((person) => html`<button aria-pressed=${String(state.me?.by === person.by)} @click=${() => choose(person)}>${person.words}</button>`)}</div>
  ${state.me && state.me.role !== 'pilot' ? html`<label class="field">${t('join.at')} <select @change=${(event) => set({ me: { ...state.me, place: event.target.value } })}>
    ${(state.day.places ?? []).map((place) => html`<option value=${place.id} ?selected=${place.id === state.me.place}>${place.id} ${place.name}</option>`)}</select></label>` : nothing}
  ${state.me ? html`<p>${t('join.device')} <b>${state.me.device}</b></p><button class="big main" @click=${begin}>${t('join.ready')}</button>` : nothing}` : html`<p>${t('wait')}</p>`}
  <p class="hint">${state.stockedAt ? t('join.stock', { time: local(new Date(state.stockedAt + state.shiftMs).toISOString(), false) }) : t('join.nostock')}</p>
  ${isSecureContext ? nothing : html`<p class="caution">${t('link.open')}</p>`}
  ${options(t('join.theme'), { system: t('join.system'), day: t('day'), night: t('night') }, state.reader.theme, (theme) => reader({ theme }))}
  ${options(t('join.language'), LANGUAGES, state.reader.language, (language) => reader({ language, spoken: true }))}
  ${options(t('join.units'), { metric: t('join.metric'), us: t('join.us') }, state.reader.units, (units) => reader({ units }))}
  ${options(t('join.north'), { true: t('join.true'), mag: t('join.mag') }, state.reader.north, (north) => reader({ north }))}
  <p class="hint" id="card">${t(cardMm() === LONG_MM ? 'join.card' : 'join.cardShort', { mm: cardMm() })}</p>
  <input type="range" aria-labelledby="card" min="3" max="12" step="0.05" .value=${String(state.reader.mm ?? 6.5)} @input=${(event) => reader({ mm: Number(event.target.value) })}>
  <div class="cardbox"><div class="card" style=${`width:${(state.reader.mm ?? 6.5) * cardMm()}px`}></div></div>
  ${others()}`;
