/** The screens of Practice: the exercises with what is played of them, and those of the instructor. */
export const practiceScreens = ['exercises', 'make', 'generate', 'class'] as const;
export type PracticeScreen = (typeof practiceScreens)[number];
