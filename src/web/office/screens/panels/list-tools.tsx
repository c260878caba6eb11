import type { Signal } from '@preact/signals';
import type { RefObject } from 'preact';
import type { PanelChoice, PanelOrder } from '../../../../assess/arrange-panels.ts';
import { isInState, type PanelStatus, STATES_BY_NEED } from '../../../../assess/panel-status.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import styles from './list-tools.module.css';

const ORDERS: readonly (readonly [PanelOrder, string])[] = [
  ['need', 'what needs work first'],
  ['ratio', 'highest ratio first'],
  ['mark', 'by mark'],
  ['pour', 'by pour'],
  ['job', 'as in the job'],
];

/** Search, states and order of the list of panels. */
export function ListTools({
  choice,
  panels,
  shown,
  search,
}: {
  readonly choice: Signal<PanelChoice>;
  readonly panels: readonly PanelStatus[];
  readonly shown: number;
  readonly search: RefObject<HTMLInputElement>;
}) {
  const { words, state, order } = choice.value;
  const set = (change: Partial<PanelChoice>) => {
    choice.value = { ...choice.value, ...change };
  };
  return (
    <div class={`${styles.tools} not-printed`}>
      <input
        ref={search}
        class={styles.search}
        type="search"
        aria-label="Search panels by mark, connection, insert type, concrete or pour"
        placeholder="Search: P04, C12, M16, T12 …"
        value={words}
        onInput={(event) => set({ words: event.currentTarget.value })}
      />
      <fieldset
        class={styles.states}
        aria-label="Panels by state: with a connection that fails and the like, or with all that pass"
      >
        {STATES_BY_NEED.map((one) => {
          const count = panels.filter((panel) => isInState(panel, one)).length;
          if (count === 0 && state !== one) return null;
          return (
            <Button key={one} isOn={state === one} onPress={() => set({ state: state === one ? null : one })}>
              <StateMark state={one} words={one === 'passes' ? 'all pass' : one} />
              {count}
            </Button>
          );
        })}
      </fieldset>
      <label class={styles.order}>
        <span>Order</span>
        <select
          value={order}
          onChange={(event) => {
            const chosen = ORDERS.find(([value]) => value === event.currentTarget.value);
            if (chosen !== undefined) set({ order: chosen[0] });
          }}
        >
          {ORDERS.map(([value, text]) => (
            <option key={value} value={value}>
              {text}
            </option>
          ))}
        </select>
      </label>
      <span class={styles.count} role="status">
        {shown === panels.length ? countOf(shown, 'panel') : `${shown} of ${countOf(panels.length, 'panel')}`}
      </span>
    </div>
  );
}
