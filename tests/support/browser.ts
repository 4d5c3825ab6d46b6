// After each file of browser tests: its one browser is closed.
import { afterAll } from 'vitest';
import { closeBrowser } from './launch.ts';

afterAll(closeBrowser);
