import type { Messages } from "@/lib/words/reader";
import figure from "./figure.json";
import job from "./job.json";
import jobRefusal from "./job-refusal.json";
import problem from "./problem.json";
import settingRefusal from "./setting-refusal.json";
import settings from "./settings.json";
import shell from "./shell.json";

export const GERMAN: Messages = {
	figure,
	job,
	jobRefusal,
	problem,
	settingRefusal,
	settings,
	shell,
};
