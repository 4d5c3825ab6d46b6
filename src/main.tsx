import '@fontsource/barlow-semi-condensed/latin-400.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import './styles.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { startKeeping } from './state/keeping.ts';

startKeeping();
const root = document.getElementById('root');
if (root === null) throw new Error('The page has no root element.');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
