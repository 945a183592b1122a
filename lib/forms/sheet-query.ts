import { z } from "zod";

/** What the address of a job sheet's PDF may ask for. */
export const sheetQuerySchema = z.strictObject({
	paper: z.enum(["a4", "letter"]).default("a4"),
	/** As the reader chose before, where the address does not say. */
	units: z.enum(["metric", "trade"]).optional(),
});
