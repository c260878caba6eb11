import '../parts/fonts.css';
import '../parts/base.css';
import './yard.css';
import { render } from 'preact';
import * as z from 'zod';
import { registerServiceWorker } from '../parts/register-service-worker.ts';
import { YardApp } from './app.tsx';
import { followLight } from './state/light.ts';

// zod would compile with `new Function`, which the page's rules do not allow.
z.config({ jitless: true });

followLight();
const root = document.getElementById('app');
if (root === null) throw new Error('the page has no place for the yard (#app)');
render(<YardApp />, root);
void registerServiceWorker();
