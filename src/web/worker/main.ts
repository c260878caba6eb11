import { expose } from 'comlink';
import { JobWorker } from './job-worker.ts';

expose(new JobWorker());
