// The key of the map: every mark with its word, drawn as on the map.
import { html, svg } from '/lib/lit/lit-html.js';
import { t } from './words.js';

const LINES = {
  leg: svg`<path d="M2 9H46" class="thick" />`,
  empty: svg`<path d="M2 9H46" class="thick" stroke-dasharray="2 7" />`,
  closed: svg`<path d="M2 9H46" class="casing" /><path d="M2 9H46" class="closed" />`,
  guarded: svg`<path d="M2 9H46" class="casing" /><path d="M2 9H46" class="guarded" /><path d="M2 9H46" class="rungs" />`,
  open: svg`<path d="M2 9H46" class="casing" /><path d="M2 9H46" class="open" stroke-dasharray="6 4" />`,
  named: svg`<path d="M2 9H46" class="casing" /><path d="M2 9H46" class="named" />`,
  reach: svg`<path d="M2 2H46M2 16H46" class="thin" stroke-dasharray="2 4" /><path d="M6 9h.1m8 0h.1m8 0h.1m8 0h.1m8 0h.1" class="dots" />`,
  wire: svg`<path d="M2 9H46" class="wireline" />`,
  buffer: svg`<path d="M2 3H46M2 15H46" class="thin" />`,
  zone: svg`<path d="M4 2h40v14H4Z" class="thick" stroke-dasharray="12 4" fill="none" />`,
  release: svg`<path d="M4 2h40v14H4Z" class="thin" stroke-dasharray="2 3" fill="none" />`,
  site: svg`<path d="M24 1l6 8-6 8-6-8Z" class="thin" />`,
  laydown: svg`<path d="M17 2h14v14H17Z" class="thin" />`,
  landing: svg`<path d="M16 9l4-7h8l4 7-4 7h-8Zm6-4v8m4-8v8m-4-4h4" class="thin" />`,
  house: svg`<path d="M19 4h10v10H19Z" class="full" />`,
  people: svg`<path d="M24 3l7 12H17Z" class="thin" />`,
  mast: svg`<path d="M24 1l8 6-3 10H19L16 7Z" class="thin" />`,
};

export const mapKey = () => html`<details class="mapkey"><summary>${t('key.title')}</summary><ul>${Object.entries(LINES).map(([name, drawing]) => html`
  <li><svg viewBox="0 0 48 18" width="48" height="18" aria-hidden="true">${drawing}</svg> ${t(`key.${name}`)}</li>`)}</ul></details>`;
