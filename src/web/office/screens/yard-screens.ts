// What comes back from the yard, as one script.
export { AsCastScreen } from './as-cast/as-cast-screen.tsx';
export { LearnScreen } from './learn/learn-screen.tsx';
export { PlatesScreen } from './learn/plates-screen.tsx';
export { PeopleScreen } from './people/people-screen.tsx';
export { SurveyScreen } from './survey/survey-screen.tsx';
export { YardPieceScreen } from './yard/yard-piece-screen.tsx';
export { YardScreen } from './yard/yard-screen.tsx';
