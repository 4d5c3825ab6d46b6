/** The worker that works out where a point may go. */
import { serve } from './serve.ts';
import { createWhereRunner, handedOf, type WhereAnswer, type WhereRequest } from './whereJob.ts';

serve<WhereRequest, WhereAnswer>(createWhereRunner, handedOf);
