// Small drawings that mean the same everywhere: state badges and the shapes of loads and steps.
// State is never hue alone: a filled badge, a shape, a pattern of its edge, and a word.
import { html, svg } from '/lib/lit/lit-html.js';
import { t } from './words.js';

export const STATES = ['inside', 'near', 'outside', 'free', 'refused'];

const SIGN = {
  inside: svg`<circle cx="8" cy="8" r="5.5" />`,
  near: svg`<path d="M8 1.5 15 14.5H1Z" />`,
  outside: svg`<path d="M1.5 1.5l13 13m0-13l-13 13" class="stroke" />`,
  free: svg`<circle cx="8" cy="8" r="5.5" />`,
  refused: svg`<path d="M1.5 1.5l13 13m0-13l-13 13" class="stroke" />`,
};

export const badge = (state, word = t(`state.${state}`)) => html`<span class="badge ${state}"
  ><svg viewBox="0 0 16 16" aria-hidden="true">${SIGN[state] ?? SIGN.near}</svg>${word}</span>`;

const SEVERITY = { STOP: 'outside', CAUTION: 'near', NOTE: 'note' };

export const severity = (word) => (SEVERITY[word] === 'note'
  ? html`<span class="badge note"><svg viewBox="0 0 16 16" aria-hidden="true"><path d="M2 3h12M2 8h12M2 13h8" class="stroke" /></svg>${t('severity.NOTE')}</span>`
  : badge(SEVERITY[word], t(`severity.${word}`)));

// What hangs from the hook, drawn hanging: 24 wide, 24 high, hook at the top middle.
const LOADS = {
  bag: svg`<path d="M12 2v5M6 9h12l1 12H5Z" />`,
  pole: svg`<path d="M12 2v3M10 5h4v18h-4Z" />`,
  rig: svg`<path d="M12 2v5M4 8h16v8H4ZM6 16v5h4v-5m4 0v5h4v-5" />`,
  water: svg`<path d="M12 2v4M12 6c5 6 7 9 7 11a7 6 0 0 1-14 0c0-2 2-5 7-11Z" />`,
  crate: svg`<path d="M12 2v5M4 8h16v14H4ZM4 8l16 14M20 8 4 22" />`,
  backhaul: svg`<path d="M12 22V8M7 12l5-6 5 6M5 2h14" />`,
  plate: svg`<path d="M12 2v9M2 11h20v4H2Z" />`,
  winch: svg`<path d="M12 2v4M4 12a8 8 0 1 0 16 0 8 8 0 1 0-16 0m5 0h6" />`,
  drum: svg`<path d="M12 2v5M3 7h4v15H3ZM17 7h4v15h-4ZM7 10h10v9H7Z" />`,
};
const STEPS = {
  refuel: svg`<path d="M6 22V4h8v18M14 10h4v8h-4M8 7h4" />`,
  lineChange: svg`<path d="M8 2v8m0 4v8M4 10h8M4 14h8M16 2v20" />`,
  crewMove: svg`<path d="M8 8a4 4 0 1 0 8 0 4 4 0 1 0-8 0M4 22c0-6 3-9 8-9s8 3 8 9" />`,
  position: svg`<path d="M3 12h16m-6-6 6 6-6 6" />`,
  break: svg`<path d="M4 8h12v8a5 5 0 0 1-12 0ZM16 10h4v5h-4M8 2v3m4-3v3" />`,
  wait: svg`<path d="M6 3h12M6 21h12M7 3c0 9 10 9 10 18M17 3c0 9-10 9-10 18" />`,
};

export const shape = (kind) => html`<svg class="shape" viewBox="0 0 24 24" aria-hidden="true">${LOADS[kind] ?? STEPS[kind] ?? LOADS.bag}</svg>`;
