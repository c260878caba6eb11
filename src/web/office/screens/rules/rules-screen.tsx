import { NOT_COVERED, RULE_CAUTIONS } from '../../../../say/rule-words.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Page, Section } from '../../../parts/page.tsx';
import { useOffice } from '../../state/office.ts';
import { AcceptanceRules } from './acceptance-rules.tsx';
import { ConcreteRules } from './concrete-rules.tsx';
import { PlacingRules } from './placing-rules.tsx';
import { ProjectRules } from './project-rules.tsx';
import styles from './rules.module.css';
import { StrengthRules } from './strength-rules.tsx';
import { YardRules } from './yard-rules.tsx';
import { ZoneRules } from './zone-rules.tsx';

const PARTS = [
  ['strength', 'By what is checked'],
  ['placing', 'Placing and life'],
  ['acceptance', 'What QA may accept'],
  ['zones', 'Position zones'],
  ['concrete', 'Concretes'],
  ['yard', 'The yard'],
  ['project', 'The project'],
  ['limits', 'Not covered'],
] as const;

/** By what a job is checked, and what is taken where a drawing says nothing. */
export function RulesScreen() {
  const { session } = useOffice();
  return (
    <Page
      title="Rules"
      lead="By what the job is checked, what is taken where a drawing says nothing, and the yard that makes it. They hold for this job; issued revisions keep theirs."
    >
      <div class={styles.layout}>
        <nav class={`${styles.list} not-printed`} aria-label="Parts of the rules">
          {PARTS.map(([anchor, words]) => (
            <a key={anchor} href={`#${anchor}`}>
              {words}
            </a>
          ))}
        </nav>
        <div class={styles.parts}>
          <StrengthRules session={session} />
          <PlacingRules session={session} />
          <AcceptanceRules session={session} />
          <ZoneRules session={session} />
          <ConcreteRules session={session} />
          <YardRules session={session} />
          <ProjectRules session={session} />
          <Section title="What nothing here covers" anchor="limits">
            <ul class={styles.points}>
              {NOT_COVERED.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
            <Notice kind="caution" title="Before relying on an answer">
              <ul class={styles.points}>
                {RULE_CAUTIONS.map((text) => (
                  <li key={text}>{text}</li>
                ))}
              </ul>
            </Notice>
          </Section>
        </div>
      </div>
    </Page>
  );
}
