// What is done with a piece that is out of its form, as one script.
export { BoltsScreen } from './bolts/bolts-screen.tsx';
export { DeliveryScreen } from './delivery/delivery-screen.tsx';
export { LearnedLine } from './device/learned-line.tsx';
export { FitScreen } from './fit/fit-screen.tsx';
export { SurveyScreen } from './survey/survey-screen.tsx';
