// The words of the page in the reader's language. Both files come with the page: there may be no
// network to fetch another one later.
import { html } from '/lib/lit/lit-html.js';
import en from './words/en.js';
import de from './words/de.js';
import { marked, turned } from '../quantities.js';
import { us } from './units.js';

export const LANGUAGES = { en: 'English', de: 'Deutsch' };
const ALL = { en, de };

let words = en;

/** The sentence of that key, with {name} filled in. English stands in where a language has a gap. */
export function t(key, values = {}) {
  const sentence = words[key] ?? en[key] ?? key;
  return sentence.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);
}

const inUnits = (sentence) => (us() ? marked(sentence ?? '') : sentence ?? '');

/** A sentence of the server in the reader's language and units; one whose shape it does not know is marked as English. */
export function said(sentence) {
  const text = inUnits(sentence);
  const known = words.says?.find(([shape]) => shape.test(text));
  return known ? turned(text.replace(known[0], known[1])) : html`<span lang="en">${turned(text)}</span>`;
}

/** The same where only plain text can stand. */
export function plainly(text) {
  const sentence = said(text);
  return typeof sentence === 'string' ? sentence : turned(inUnits(text));
}

export function speak(language) {
  words = ALL[language] ?? en;
  document.documentElement.lang = language in ALL ? language : 'en';
}
