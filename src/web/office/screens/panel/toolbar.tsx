import type { Signal } from '@preact/signals';
import { Button } from '../../../parts/button.tsx';
import type { CanvasView } from './desk/canvas-view.ts';
import type { PanelDesk } from './desk/panel-desk.ts';
import { isSnapping, showsBars, showsConcrete, takesSingly } from './desk/settings.ts';
import styles from './panel-screen.module.css';

const ZOOM_STEP = 1.3;

function flip(setting: Signal<boolean>): void {
  setting.value = !setting.peek();
}

/** How the panel is looked at and taken hold of. */
export function Toolbar({
  desk,
  view,
  onPlace,
}: {
  readonly desk: PanelDesk;
  readonly view: CanvasView;
  readonly onPlace: () => void;
}) {
  const kind = desk.sightKind.value;
  const look = (next: typeof kind) => () => {
    desk.sightKind.value = next;
  };
  return (
    <div class={`${styles.tools} not-printed`} role="toolbar" aria-label="Drawing">
      <fieldset class={styles.group}>
        <legend class="aloud">Looked at</legend>
        <Button isOn={kind === 'drawn'} shortcut="V" onPress={look('drawn')}>
          As drawn
        </Button>
        <Button isOn={kind === 'form'} shortcut="V" onPress={look('form')}>
          In the form
        </Button>
      </fieldset>
      <Button kind="main" isDisabled={desk.isHanded} shortcut="P" onPress={onPlace}>
        Place …
      </Button>
      <fieldset class={styles.group}>
        <legend class="aloud">Moving</legend>
        <Button isOn={takesSingly.value} shortcut="S" onPress={() => flip(takesSingly)}>
          Single inserts
        </Button>
        <Button isOn={isSnapping.value} shortcut="G" onPress={() => flip(isSnapping)}>
          Snap
        </Button>
      </fieldset>
      <fieldset class={styles.group}>
        <legend class="aloud">Shown</legend>
        <Button isOn={showsConcrete.value} shortcut="A" onPress={() => flip(showsConcrete)}>
          Counted concrete
        </Button>
        <Button isOn={showsBars.value} shortcut="B" onPress={() => flip(showsBars)}>
          Bars
        </Button>
      </fieldset>
      <fieldset class={styles.group}>
        <legend class="aloud">Size</legend>
        <Button kind="quiet" name="Smaller" shortcut="-" onPress={() => view.zoom(1 / ZOOM_STEP)}>
          −
        </Button>
        <Button kind="quiet" name="Larger" shortcut="+" onPress={() => view.zoom(ZOOM_STEP)}>
          +
        </Button>
        <Button kind="quiet" shortcut="0" onPress={() => view.fit(desk.sight.peek().box)}>
          All
        </Button>
      </fieldset>
    </div>
  );
}

/** What the drawing's keys do, as commands of the screen. */
export function listCommands(desk: PanelDesk, view: CanvasView, onPlace: () => void) {
  return [
    {
      name: 'As drawn, or in the form',
      key: 'V',
      run: () => {
        desk.sightKind.value = desk.sightKind.peek() === 'drawn' ? 'form' : 'drawn';
      },
    },
    { name: 'Place something', key: 'P', isAllowed: () => !desk.isHanded, run: onPlace },
    { name: 'Take inserts singly, or with their connection', key: 'S', run: () => flip(takesSingly) },
    { name: 'Snap on or off', key: 'G', run: () => flip(isSnapping) },
    { name: 'Counted concrete on or off', key: 'A', run: () => flip(showsConcrete) },
    { name: 'Bars on or off', key: 'B', run: () => flip(showsBars) },
    { name: 'All of the panel', key: '0', run: () => view.fit(desk.sight.peek().box) },
    { name: 'Larger', key: '+', run: () => view.zoom(ZOOM_STEP) },
    { name: 'Smaller', key: '-', run: () => view.zoom(1 / ZOOM_STEP) },
  ];
}
