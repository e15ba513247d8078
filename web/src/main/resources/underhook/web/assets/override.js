// Overriding a limit: never without a reason and a name of a role; both are kept and printed.
import { html } from '/lib/lit/lit-html.js';
import { actions } from './actions.js';
import { codeWords, t } from './words.js';

actions.openOverride = (code, subject) => actions.open(() => html`<h2>${t('override.title', { code: codeWords(code), subject })}</h2>
  <p>${t('override.hint')}</p>
  <form @submit=${async (event) => {
    event.preventDefault();
    const data = new FormData(event.target);
    const done = await actions.override({ code, subject, reason: data.get('reason').trim(), by: data.get('by').trim() });
    if (done) {
      actions.close();
      actions.say(t('override.kept'));
      actions.loadPlan();
    }
  }}>
    <label>${t('override.reason')} <textarea name="reason" required minlength="10" rows="3"></textarea></label>
    <label>${t('override.by')} <input name="by" required minlength="2" autocomplete="off"></label>
    <button class="main">${t('override.go')}</button>
  </form>`);
