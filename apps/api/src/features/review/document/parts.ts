import type { Content } from 'pdfmake/interfaces.js';
import type { Sheet } from './drawing.ts';
import { causes, costliest, escapes, figures, gaps, gates, prevention } from './figure-parts.ts';
import { actions, complaints, decisions, effects, promises, signals } from './follow-parts.ts';

/** In the order in which a manager goes through them. */
const parts = [
  promises,
  signals,
  figures,
  causes,
  costliest,
  escapes,
  gates,
  prevention,
  complaints,
  actions,
  effects,
  gaps,
  decisions,
];

export const partsOf = (sheet: Sheet): Content[] => parts.map((draw) => draw(sheet));
