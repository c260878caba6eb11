import type { ComponentChildren } from 'preact';

/** What stands around every screen of the yard. */
export function YardShell({ children }: { readonly children: ComponentChildren }) {
  return <main>{children}</main>;
}
