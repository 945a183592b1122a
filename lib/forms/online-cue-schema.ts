import { z } from "zod";
import {
	MOST_ONLINE_TYPED,
	ONLINE_FIELDS,
	type OnlineAnswers,
} from "./online-cue";

const text = z.string().max(MOST_ONLINE_TYPED);

/** The answers of an online cue as they come in and as they are stored. A field not asked here is refused. */
export const onlineAnswersSchema: z.ZodType<OnlineAnswers> = z.strictObject(
	Object.fromEntries(ONLINE_FIELDS.map((field) => [field, text.optional()])),
);
