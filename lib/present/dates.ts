const DAY = new Intl.DateTimeFormat("en-GB", {
	day: "numeric",
	month: "long",
	year: "numeric",
	timeZone: "UTC",
});

/** "3 May 2026", in universal time, so that server and reader write the same day. */
export const formatDate = (date: Date): string => DAY.format(date);
