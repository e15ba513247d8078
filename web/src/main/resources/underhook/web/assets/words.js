// The words of the page in the reader's language; one file for each language under words/.
import en from './words/en.js';

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

export async function speak(language) {
  words = language in LANGUAGES ? (await import(`./words/${language}.js`)).default : en;
  document.documentElement.lang = language in LANGUAGES ? language : 'en';
}
