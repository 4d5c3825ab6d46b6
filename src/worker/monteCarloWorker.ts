/** The worker that draws corners at random. */
import {
  createMonteCarloRunner,
  type MonteCarloAnswer,
  type MonteCarloRequest,
} from './monteCarloJob.ts';
import { serve } from './serve.ts';

serve<MonteCarloRequest, MonteCarloAnswer>(createMonteCarloRunner);
