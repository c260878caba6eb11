import '../parts/fonts.css';
import '../parts/base.css';
import { render } from 'preact';
import * as z from 'zod';
import { registerServiceWorker } from '../parts/register-service-worker.ts';
import { followTheme } from '../parts/theme.ts';
import { App } from './app.tsx';
import { listenForCommands } from './state/commands.ts';

// zod would compile with `new Function`, which the page's rules do not allow.
z.config({ jitless: true });

followTheme();
listenForCommands();
const root = document.getElementById('app');
if (root === null) throw new Error('the page has no place for the office (#app)');
render(<App />, root);
void registerServiceWorker();
