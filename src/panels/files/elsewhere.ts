/** What the page knows of copies of its work. */
import { createElsewhere } from '../../state/elsewhere.ts';
import { createShelf } from '../../state/shelf.ts';

export const elsewhere = createElsewhere(createShelf(() => localStorage));
