import { z } from "zod";

/** What the address of a job sheet's PDF may ask for. */
export const sheetQuerySchema = z.strictObject({
	/** As the workshop has set it, where the address does not say. */
	paper: z.enum(["a4", "letter"]).optional(),
	/** As the reader chose before, where the address does not say. */
	units: z.enum(["metric", "trade"]).optional(),
});
