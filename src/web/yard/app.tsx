import { lazy, Suspense } from 'preact/compat';
import { Redirect, Route, Switch } from 'wouter-preact';
import { places } from '../pieces/places.ts';
import { AfterScreen } from './screens/after/after-screen.tsx';
import { ClearanceScreen } from './screens/clearance/clearance-screen.tsx';
import { ConflictScreen } from './screens/conflict/conflict-screen.tsx';
import { DeviceScreen } from './screens/device/device-screen.tsx';
import { FormScreen } from './screens/form/form-screen.tsx';
import { HistoryScreen } from './screens/history/history-screen.tsx';
import { PieceScreen } from './screens/piece/piece-screen.tsx';
import { PourScreen } from './screens/pour/pour-screen.tsx';
import { PoursScreen } from './screens/pours/pours-screen.tsx';
import { PullScreen } from './screens/pull/pull-screen.tsx';
import { ScanScreen } from './screens/scan/scan-screen.tsx';
import { ScreedScreen } from './screens/screed/screed-screen.tsx';
import { SheetScreen } from './screens/sheet/sheet-screen.tsx';
import { StartScreen } from './screens/start/start-screen.tsx';
import { WalkScreen } from './screens/walk/walk-screen.tsx';
import { YardShell } from './shell/yard-shell.tsx';

const outScreens = () => import('./screens/out-screens.ts');

/** What is done with a piece that is out of its form comes in a script of its own, kept on the device too: a cold start does not wait for it. */
const BoltsScreen = lazy(async () => ({ default: (await outScreens()).BoltsScreen }));
const DeliveryScreen = lazy(async () => ({ default: (await outScreens()).DeliveryScreen }));
const FitScreen = lazy(async () => ({ default: (await outScreens()).FitScreen }));
const SurveyScreen = lazy(async () => ({ default: (await outScreens()).SurveyScreen }));

export function YardApp() {
  return (
    <YardShell>
      <Suspense fallback={<p aria-busy="true">Opening …</p>}>
        <Switch>
          <Route path="/yard" component={StartScreen} />
          <Route path="/yard/pours" component={PoursScreen} />
          <Route path="/yard/pour/:pour">{({ pour }) => <PourScreen key={pour} pour={pour} />}</Route>
          <Route path="/yard/piece/:piece/form">{({ piece }) => <FormScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece/walk/:stage">
            {({ piece, stage }) => <WalkScreen key={`${piece} ${stage}`} piece={piece} stage={stage === '2' ? 2 : 1} />}
          </Route>
          <Route path="/yard/piece/:piece/screed">{({ piece }) => <ScreedScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece/clearance">
            {({ piece }) => <ClearanceScreen key={piece} piece={piece} />}
          </Route>
          <Route path="/yard/piece/:piece/conflicts">
            {({ piece }) => <ConflictScreen key={piece} piece={piece} />}
          </Route>
          <Route path="/yard/piece/:piece/after">{({ piece }) => <AfterScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece/fit/:connection?">
            {({ piece, connection }) => (
              <FitScreen key={`${piece} ${connection ?? ''}`} piece={piece} connection={connection ?? null} />
            )}
          </Route>
          <Route path="/yard/piece/:piece/bolts">{({ piece }) => <BoltsScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece/pull">{({ piece }) => <PullScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece/delivery">
            {({ piece }) => <DeliveryScreen key={piece} piece={piece} />}
          </Route>
          <Route path="/yard/piece/:piece/history">{({ piece }) => <HistoryScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece/survey">{({ piece }) => <SurveyScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece/sheet">{({ piece }) => <SheetScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/piece/:piece">{({ piece }) => <PieceScreen key={piece} piece={piece} />}</Route>
          <Route path="/yard/scan" component={ScanScreen} />
          <Route path="/yard/device" component={DeviceScreen} />
          <Route>
            <Redirect to={places.start()} />
          </Route>
        </Switch>
      </Suspense>
    </YardShell>
  );
}
