/** The one bench of the page: its document, its inputs, its view, wired together. Tests make their own from the parts. */
import factory from '../../models/half-ton-factory.json';
import { parseModel } from '../../solver/index.ts';
import { createDocument } from './document.ts';
import { createInputs } from './inputs.ts';
import { createNotices } from './notices.ts';
import { createPosed } from './posed.ts';
import { createView } from './view.ts';

const opened = parseModel(JSON.stringify(factory), 'half-ton-factory.json');
if (!opened.ok) throw new Error(`The first model is not sound: ${opened.error.path}`);

export const documentStore = createDocument(opened.model, 'half-ton-factory.json');
export const inputs = createInputs(documentStore);
export const view = createView();
export const notices = createNotices();
export const posed = createPosed(documentStore, inputs);
