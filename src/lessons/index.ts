/** Lessons made of the same steps as the walk: what the rest of the page uses. */
import '../stitch/stitch.css';
import './lessons.css';
import './choosing.css';
import './asked.css';

export { createLessons, type Lessons, type LessonsOptions, type LessonsView } from './lessons.ts';
export type { LessonEvent } from './machine.ts';
export { lessonsPanel, type SendLesson } from './panel.ts';
