import { lazy, Suspense } from 'preact/compat';
import { Redirect, Route, Switch } from 'wouter-preact';
import { Empty } from '../parts/notice.tsx';
import { JobsScreen } from './screens/jobs/jobs-screen.tsx';
import { JobShell } from './shell/job-shell.tsx';
import { OutsideShell } from './shell/outside-shell.tsx';
import { addresses } from './state/addresses.ts';
import { useOffice } from './state/office.ts';

/** Each screen of a job is a script of its own, so that the first drawing waits for none of the others. */
const PanelsScreen = lazy(async () => ({ default: (await import('./screens/panels/panels-screen.tsx')).PanelsScreen }));
const PanelScreen = lazy(async () => ({ default: (await import('./screens/panel/panel-screen.tsx')).PanelScreen }));
const ConnectionScreen = lazy(async () => ({
  default: (await import('./screens/connection/connection-screen.tsx')).ConnectionScreen,
}));
const ChoosingScreen = lazy(async () => ({
  default: (await import('./screens/choosing/choosing-screen.tsx')).ChoosingScreen,
}));
const PoursScreen = lazy(async () => ({ default: (await import('./screens/pours/pours-screen.tsx')).PoursScreen }));
const PartsScreen = lazy(async () => ({ default: (await import('./screens/parts/parts-screen.tsx')).PartsScreen }));
const CatalogueScreen = lazy(async () => ({
  default: (await import('./screens/catalogue/catalogue-screen.tsx')).CatalogueScreen,
}));
const DetailsScreen = lazy(async () => ({
  default: (await import('./screens/details/details-screen.tsx')).DetailsScreen,
}));
const RulesScreen = lazy(async () => ({ default: (await import('./screens/rules/rules-screen.tsx')).RulesScreen }));
const RevisionsScreen = lazy(async () => ({
  default: (await import('./screens/revisions/revisions-screen.tsx')).RevisionsScreen,
}));

const TransmittalScreen = lazy(async () => ({
  default: (await import('./screens/revisions/transmittal-screen.tsx')).TransmittalScreen,
}));
const ImportScreen = lazy(async () => ({ default: (await import('./screens/import/import-screen.tsx')).ImportScreen }));

/** Files for the job that is open. */
function ImportIntoJob() {
  return <ImportScreen into={useOffice().session} />;
}

/** Files for a job that is not there yet. */
function ImportNewJob() {
  return (
    <OutsideShell>
      <Suspense fallback={<p aria-busy="true">Opening …</p>}>
        <ImportScreen into={null} />
      </Suspense>
    </OutsideShell>
  );
}

/** Something that wouter gives as a part of the address, decoded. */
interface JobPart {
  readonly params: { readonly job: string };
}

function OpenJob({ params: { job } }: JobPart) {
  return (
    <JobShell key={job} id={job}>
      <Suspense fallback={<p aria-busy="true">Opening …</p>}>
        <Switch>
          <Route path="/job/:job/panels" component={PanelsScreen} />
          <Route path="/job/:job/panel/:mark">{({ mark }) => <PanelScreen key={mark} mark={mark} />}</Route>
          <Route path="/job/:job/connection/:mark/insert">
            {({ mark }) => <ChoosingScreen key={mark} mark={mark} />}
          </Route>
          <Route path="/job/:job/connection/:mark">{({ mark }) => <ConnectionScreen key={mark} mark={mark} />}</Route>
          <Route path="/job/:job/pours/:pour?">{({ pour }) => <PoursScreen pour={pour ?? null} />}</Route>
          <Route path="/job/:job/parts" component={PartsScreen} />
          <Route path="/job/:job/catalogue/:item?">{({ item }) => <CatalogueScreen item={item ?? null} />}</Route>
          <Route path="/job/:job/details" component={DetailsScreen} />
          <Route path="/job/:job/rules" component={RulesScreen} />
          <Route path="/job/:job/revisions" component={RevisionsScreen} />
          <Route path="/job/:job/transmittal" component={TransmittalScreen} />
          <Route path="/job/:job/files" component={ImportIntoJob} />
          <Route>
            <Redirect to={addresses.panels(job)} />
          </Route>
        </Switch>
      </Suspense>
    </JobShell>
  );
}

export function App() {
  return (
    <Switch>
      <Route path="/" component={JobsScreen} />
      <Route path="/files" component={ImportNewJob} />
      <Route path="/job/:job/*?" component={OpenJob} />
      <Route>
        <main>
          <Empty title="Nothing is here">
            <p>There is no screen at this address.</p>
            <a href="/">All jobs</a>
          </Empty>
        </main>
      </Route>
    </Switch>
  );
}
