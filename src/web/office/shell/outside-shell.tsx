import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { Link, useLocation } from 'wouter-preact';
import { addresses } from '../state/addresses.ts';
import { useArrival } from '../state/arrive.ts';
import head from './head.module.css';
import { Messages } from './messages.tsx';
import styles from './outside-shell.module.css';
import { ProductSign } from './product-sign.tsx';

/** What stands around the screens that belong to no job. */
export function OutsideShell({ children }: { readonly children: ComponentChildren }) {
  const [location] = useLocation();
  const main = useRef<HTMLElement>(null);
  const screen = useArrival(main, null);
  const link = (name: string, to: string) => (
    <Link class={head.screen} href={to} aria-current={location === to ? 'page' : undefined}>
      {name}
    </Link>
  );
  return (
    <div class={styles.frame}>
      <header class={`${head.head} not-printed`}>
        <Link class={head.home} href={addresses.jobs()} aria-label="Onepour: all jobs">
          <ProductSign />
          <span class={head.name}>Onepour</span>
        </Link>
        <nav class={head.screens} aria-label="Screens">
          {link('Jobs', addresses.jobs())}
          {link('Read files', addresses.readFiles())}
          {link('People', addresses.people())}
          {/* Pages of their own, that work without the server. */}
          <a class={head.screen} href="/answer">
            Insert out of place
          </a>
          <a class={head.screen} href={addresses.tablet()}>
            Yard tablet
          </a>
        </nav>
      </header>
      <main ref={main} class={styles.screen} tabIndex={-1} aria-label={screen}>
        {children}
      </main>
      <footer class={styles.foot}>
        An aid for a competent person: local codes and the licensed design engineer decide. A fixing insert is not a
        lifting insert unless its maker rates it so.
      </footer>
      <Messages />
    </div>
  );
}
