/** The way from the counts to a panel that is not made yet. Apart, since it is shown where nothing else of the cloth is. */
export const FROM_SIZE = { asks: 'Not made yet?', opens: 'Start from a size or a pad' } as const;
