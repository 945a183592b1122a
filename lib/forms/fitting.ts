import type { z } from "zod";
import type { UnitSystem } from "@/lib/units/quantity";
import { answersSchema, problemsOf } from "./answers";
import { FIELD_NAMES } from "./fields";

/**
 * The typed form's schema for one unit system: the stored shape, and one issue for each answer that
 * cannot be read, with the problem itself as the issue's params.
 */
export const fittingFormSchema = (system: UnitSystem) =>
	answersSchema.superRefine((answers, context) => {
		for (const name of FIELD_NAMES)
			for (const problem of problemsOf(name, answers[name], system))
				context.addIssue({
					code: "custom",
					path: problem.index === undefined ? [name] : [name, problem.index],
					params: { problem },
					message: problem.code,
				});
	});

export type FittingForm = z.infer<typeof answersSchema>;
