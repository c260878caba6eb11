import { lazy, Suspense } from 'preact/compat';
import { Link, Redirect, Route, Switch } from 'wouter-preact';
import { Page } from '../parts/page.tsx';
import { JobsScreen } from './screens/jobs/jobs-screen.tsx';
import { PanelsScreen } from './screens/panels/panels-screen.tsx';
import { JobShell } from './shell/job-shell.tsx';
import { OutsideShell } from './shell/outside-shell.tsx';
import { addresses } from './state/addresses.ts';
import { useOffice } from './state/office.ts';

const designScreens = () => import('./screens/design-screens.ts');
const jobScreens = () => import('./screens/job-screens.ts');
const yardScreens = () => import('./screens/yard-screens.ts');

/** Jobs and panels come with the page; the rest in three scripts, so that the first drawing does not wait for it. */
const PanelScreen = lazy(async () => ({ default: (await designScreens()).PanelScreen }));
const ConnectionScreen = lazy(async () => ({ default: (await designScreens()).ConnectionScreen }));
const ChoosingScreen = lazy(async () => ({ default: (await designScreens()).ChoosingScreen }));
const PoursScreen = lazy(async () => ({ default: (await jobScreens()).PoursScreen }));
const PartsScreen = lazy(async () => ({ default: (await jobScreens()).PartsScreen }));
const CatalogueScreen = lazy(async () => ({ default: (await jobScreens()).CatalogueScreen }));
const DetailsScreen = lazy(async () => ({ default: (await jobScreens()).DetailsScreen }));
const RulesScreen = lazy(async () => ({ default: (await jobScreens()).RulesScreen }));
const RevisionsScreen = lazy(async () => ({ default: (await jobScreens()).RevisionsScreen }));
const TransmittalScreen = lazy(async () => ({ default: (await jobScreens()).TransmittalScreen }));
const ImportScreen = lazy(async () => ({ default: (await jobScreens()).ImportScreen }));
const YardScreen = lazy(async () => ({ default: (await yardScreens()).YardScreen }));
const YardPieceScreen = lazy(async () => ({ default: (await yardScreens()).YardPieceScreen }));
const AsCastScreen = lazy(async () => ({ default: (await yardScreens()).AsCastScreen }));
const SurveyScreen = lazy(async () => ({ default: (await yardScreens()).SurveyScreen }));
const LearnScreen = lazy(async () => ({ default: (await yardScreens()).LearnScreen }));
const PlatesScreen = lazy(async () => ({ default: (await yardScreens()).PlatesScreen }));
const PeopleScreen = lazy(async () => ({ default: (await yardScreens()).PeopleScreen }));

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

/** People stand outside of jobs: the same for all of them. */
function People() {
  return (
    <OutsideShell>
      <Suspense fallback={<p aria-busy="true">Opening …</p>}>
        <PeopleScreen />
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
          <Route path="/job/:job/yard" component={YardScreen} />
          <Route path="/job/:job/yard/:piece/as-cast">
            {({ piece }) => <AsCastScreen key={piece} piece={piece} />}
          </Route>
          <Route path="/job/:job/yard/:piece/survey">{({ piece }) => <SurveyScreen key={piece} piece={piece} />}</Route>
          <Route path="/job/:job/yard/:piece">{({ piece }) => <YardPieceScreen key={piece} piece={piece} />}</Route>
          <Route path="/job/:job/learned" component={LearnScreen} />
          <Route path="/job/:job/learned/plates/:mark?">{({ mark }) => <PlatesScreen asked={mark ?? null} />}</Route>
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
      <Route path="/people" component={People} />
      <Route path="/job/:job/*?" component={OpenJob} />
      <Route>
        <OutsideShell>
          <Page title="Nothing is here" lead="There is no screen at this address.">
            <Link href={addresses.jobs()}>All jobs</Link>
          </Page>
        </OutsideShell>
      </Route>
    </Switch>
  );
}
