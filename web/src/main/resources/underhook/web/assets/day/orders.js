// A new order after what was told, as differences to accept or not.
import { nothing } from '/lib/lit/lit-html.js';

export const orders = () => nothing;
