// How this reader likes the page: theme, units, north, language, and the true size of a millimetre.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { LANGUAGES, speak, t } from './words.js';

// @source ISO/IEC 7810 ID-1: width of a bank card (from memory)
const CARD_MM = 85.6;

const choose = (name, options) => html`<fieldset><legend>${t(`reader.${name}`)}</legend>${Object.entries(options).map(([value, words]) => html`
  <label><input type="radio" name=${name} value=${value} .checked=${state.reader[name] === value} @change=${() => pick(name, value)}> ${words}</label>`)}</fieldset>`;

async function pick(name, value) {
  if (name === 'language') await speak(value);
  actions.setReader({ [name]: value });
}

export const readerSettings = () => html`<section class="reader" aria-label=${t('panel.reader')}>
  <h2>${t('panel.reader')}</h2>
  ${choose('theme', { system: t('theme.system'), day: t('theme.day'), night: t('theme.night'), print: t('theme.print') })}
  ${choose('units', { metric: t('units.metric'), us: t('units.us') })}
  ${choose('north', { true: t('north.true'), mag: t('north.mag') })}
  ${state.job && state.job.magneticVariationDeg == null ? html`<p class="hint">${t('north.none')}</p>` : nothing}
  ${choose('language', LANGUAGES)}
  <fieldset><legend>${t('reader.size')}</legend><p>${t('reader.card')}</p>
    <div class="wide"><svg class="card" width=${CARD_MM * (state.reader.mm ?? 6.5)} height="60" aria-hidden="true"><rect x="1" y="1" width=${CARD_MM * (state.reader.mm ?? 6.5) - 2} height="58" rx="8" /></svg></div>
    <label>${t('reader.width')} <input type="range" min="2.5" max="12" step="0.05" .value=${String(state.reader.mm ?? 6.5)} @input=${(event) => actions.setReader({ mm: Number(event.target.value) })}></label></fieldset>
  <h3>${t('keys.title')}</h3>
  <dl class="keys">${['walk', 'open', 'move', 'undo', 'map', 'grid'].map((key) => html`<div><dt><kbd>${t(`keys.${key}.key`)}</kbd></dt><dd>${t(`keys.${key}`)}</dd></div>`)}</dl>
</section>`;
