import '../parts/fonts.css';
import '../parts/base.css';
import { render } from 'preact';
import { registerServiceWorker } from '../parts/register-service-worker.ts';
import { followTheme } from '../parts/theme.ts';
import { AnswerScreen } from './answer-screen.tsx';
import { startAnswering } from './state/answering.ts';

followTheme();
const root = document.getElementById('app');
if (root === null) throw new Error('the page has no place for the answer (#app)');
render(<AnswerScreen answer={startAnswering()} />, root);
void registerServiceWorker();
