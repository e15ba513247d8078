// What can be said beside the plan: notices near the day, the heaviest piece, how often the weather holds. All
// sentences and figures are the server's; nothing here changes a plan.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { badge } from './marks.js';
import { said, t } from './words.js';

const STATE = { UNREAD: 'outside', NO: 'outside', LOOK: 'near', NOTED: 'inside', OK: 'inside' };

export function ahead() {
  if (!state.ahead) return html`<p class="waiting">${t('waiting')}</p>`;
  return html`<section class="ahead findings" tabindex="0" aria-label=${t('panel.ahead')}><h2>${t('ahead.title')}</h2><p class="hint">${t('ahead.hint')}</p>
    ${state.ahead.answers.map(answer)}</section>`;
}

const answer = (one) => html`<h3>${said(one.title)}</h3><p><strong>${said(one.caution)}</strong></p>
  <ol>${one.points.map((point) => html`<li>
    ${badge(STATE[point.mark], t(`ahead.${point.mark}`))} <b>${point.subject}</b> ${point.sentences.map((sentence) => html`${said(sentence)} `)}
    ${point.quoted ? html`<details ?open=${point.mark === 'UNREAD'}><summary>${t('ahead.quoted')}</summary><pre lang="en">${point.quoted}</pre></details>` : nothing}</li>`)}</ol>`;
