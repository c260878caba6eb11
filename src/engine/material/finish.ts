/** Surface of a steel part: bare, electroplated with zinc, hot-dip galvanised, or stainless steel. */
export type Finish = 'plain' | 'zinc' | 'galvanised' | 'stainless';
