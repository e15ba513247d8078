// The words of the page in the reader's language. Both files come with the page: there may be no
// network to fetch another one later.
import en from './words/en.js';
import de from './words/de.js';

export const LANGUAGES = { en: 'English', de: 'Deutsch' };
const ALL = { en, de };

let words = en;

/** The sentence of that key, with {name} filled in. English stands in where a language has a gap. */
export function t(key, values = {}) {
  const sentence = words[key] ?? en[key] ?? key;
  return sentence.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);
}

export function speak(language) {
  words = ALL[language] ?? en;
  document.documentElement.lang = language in ALL ? language : 'en';
}
