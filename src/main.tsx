import '@fontsource/barlow-semi-condensed/latin-400.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import './styles.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { afterFirstPicture } from './state/firstPicture.ts';
import { startKeeping } from './state/keeping.ts';

/** Longest wait for the type, ms: a page in another type is better than none. */
const PATIENCE = 500;

/** Settles when the page's type is there, so that nothing is laid out in another one and moves under a hand. */
function type(): Promise<unknown> {
  const faces = [400, 600].map((weight) =>
    document.fonts.load(`${weight} 1rem "Barlow Semi Condensed"`),
  );
  const patience = new Promise((resolve) => setTimeout(resolve, PATIENCE));
  return Promise.race([Promise.allSettled(faces), patience]);
}

startKeeping();
void type().then(() => {
  const root = document.getElementById('root');
  if (root === null) throw new Error('The page has no root element.');
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
});
void afterFirstPicture(() => import('./panels/files/links.ts')).then((late) => late.followLinks());
