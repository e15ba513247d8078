// The words of the page in the reader's language; one file for each language under words/.
import { html } from '/lib/lit/lit-html.js';
import en from './words/en.js';
import { marked, turned } from './quantities.js';
import { us } from './state.js';

export const LANGUAGES = { en: 'English', de: 'Deutsch' };

let words = en;

/** The sentence of that key, with {name} filled in. English stands in where a language has a gap. */
export function t(key, values = {}) {
  const sentence = words[key] ?? en[key] ?? key;
  return sentence.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);
}

/** A code of docs/findings.md in words, or the code itself where there are none. */
export function codeWords(code) {
  const [, word, place] = /^(\w+)(?: at (.+))?$/.exec(code) ?? [null, code];
  const found = t(`code.${word}`);
  return `${found === `code.${word}` ? word : found}${place ? `, ${place}` : ''}`;
}

const inUnits = (sentence) => (us() ? marked(sentence ?? '') : sentence ?? '');

/**
 * A sentence of the server in the reader's language and units. A language may know the shape of a sentence and
 * say it with the same values; any other stands in English and is marked so for those who hear it read.
 */
export function said(sentence) {
  const text = inUnits(sentence);
  const known = words.says?.find(([shape]) => shape.test(text));
  return known ? turned(text.replace(known[0], known[1])) : html`<span lang="en">${turned(text)}</span>`;
}

/** The same where only plain text can stand. */
export function plainly(sentence) {
  const text = said(sentence);
  return typeof text === 'string' ? text : turned(inUnits(sentence));
}

/** Whether there is a word for that key. */
export const knows = (key) => key in words || key in en;

/** Where a value is from: what its file is for, common practice, or as the server says it. */
export const sourceWords = (source) => (source === 'PRACTICE' ? t('findings.practice') : knows(`role.${source}`) ? t(`role.${source}`) : source ?? '');

export async function speak(language) {
  words = language in LANGUAGES ? (await import(`./words/${language}.js`)).default : en;
  document.documentElement.lang = language in LANGUAGES ? language : 'en';
}
