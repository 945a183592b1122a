/** Every source the project rests on, once. `standing` says how the text itself was seen. */
export interface Citation {
	readonly title: string;
	readonly publisher: string;
	readonly year: number | null;
	/** read: the text or data was read; secondary: a quotation of it; memory: recalled; none: no publication. */
	readonly seen: "read" | "secondary" | "memory" | "none";
}

const citation = (
	title: string,
	publisher: string,
	year: number | null,
	seen: Citation["seen"],
): Citation => ({ title, publisher, year, seen });

export const CITATIONS = {
	"common-practice": citation(
		"Common practice of the trade, no source",
		"—",
		null,
		"none",
	),
	"project-judgement": citation("This project's judgement", "—", null, "none"),
	"measured-here": citation("Measured in this fitting", "—", null, "none"),
	"wood-handbook-2021": citation(
		"Wood Handbook, FPL-GTR-282",
		"U.S. Forest Products Laboratory",
		2021,
		"read",
	),
	"wood-handbook-2010": citation(
		"Wood Handbook, FPL-GTR-190",
		"U.S. Forest Products Laboratory",
		2010,
		"read",
	),
	"chudnoff-1984": citation(
		"Tropical Timbers of the World, Agriculture Handbook 607",
		"U.S. Department of Agriculture",
		1984,
		"read",
	),
	tropix: citation("Tropix technical sheets", "CIRAD", null, "read"),
	"wood-compilation": citation(
		"Open species compilation after the 2021 handbook and a public wood database",
		"—",
		null,
		"secondary",
	),
	"astm-d2555": citation(
		"ASTM D2555-06, clear wood strength values",
		"ASTM International",
		2006,
		"secondary",
	),
	"irish-ash-2020": citation(
		"Properties of Irish ash logs, Annals of Forest Science, table 4",
		"INRAE",
		2020,
		"read",
	),
	"ansur-2": citation(
		"2012 Anthropometric Survey of U.S. Army Personnel, NATICK/TR-15/007",
		"U.S. Army Natick",
		2014,
		"read",
	),
	"snyder-1977": citation(
		"Anthropometry of Infants, Children and Youths to Age 18",
		"U.S. Consumer Product Safety Commission",
		1977,
		"read",
	),
	"winter-2009": citation(
		"Biomechanics and Motor Control of Human Movement, 4th ed., fig. 4.1 (after Drillis & Contini 1966)",
		"Wiley",
		2009,
		"secondary",
	),
	"cdc-2000": citation(
		"2000 CDC Growth Charts, Vital Health Stat 11(246)",
		"U.S. National Center for Health Statistics",
		2002,
		"read",
	),
	"berkeley-growth": citation(
		"Berkeley Child Guidance Study growth data (Tuddenham & Snyder 1954)",
		"University of California",
		1954,
		"read",
	),
	"pheasant-bodyspace": citation(
		"Bodyspace, hand dimensions table",
		"Taylor & Francis",
		null,
		"memory",
	),
	"kong-lowe-2005": citation(
		"Optimal cylindrical handle diameter for grip force tasks, Int J Ind Ergon 35(6):495–507",
		"Elsevier",
		2005,
		"read",
	),
	"grant-1992": citation(
		"Grant, Habes & Steward: handle diameter and manual effort, Advances in Industrial Ergonomics and Safety IV:797–804",
		"Taylor & Francis",
		1992,
		"read",
	),
	"sancho-bru-2003": citation(
		"Sancho-Bru et al.: tool handle design and grip, J Hand Ther 16:337–342",
		"Elsevier",
		2003,
		"read",
	),
	"edgren-2004": citation(
		"Edgren, Radwin & Irwin: grip force vectors for varying handle diameters, Hum Factors 46:244–251",
		"Sage",
		2004,
		"read",
	),
	"dong-2006": citation(
		"Dong et al.: instrument diameter and pinch force, J Am Dent Assoc 137:1123–1130",
		"American Dental Association",
		2006,
		"read",
	),
	"niosh-2004-164": citation(
		"Easy Ergonomics: a guide to selecting non-powered hand tools, Publication 2004-164",
		"Cal/OSHA and NIOSH",
		2004,
		"read",
	),
	"abbassi-1998": citation(
		"Growth and normal puberty, Pediatrics 102 Suppl 3:507",
		"American Academy of Pediatrics",
		1998,
		"read",
	),
	"iso-11226": citation(
		"ISO 11226: Evaluation of static working postures",
		"ISO",
		2000,
		"secondary",
	),
	"iso-7810": citation(
		"ISO/IEC 7810: Identification cards — physical characteristics",
		"ISO/IEC",
		2019,
		"memory",
	),
	"wpbsa-rules": citation(
		"Rules of snooker and English billiards, section 1",
		"World Professional Billiards and Snooker Association",
		null,
		"read",
	),
	"wpa-equipment": citation(
		"Equipment specifications",
		"World Pool-Billiard Association",
		null,
		"read",
	),
	"wepf-rules": citation(
		"Eight-ball pool equipment rules",
		"World Eightball Pool Federation",
		null,
		"read",
	),
	"umb-rules": citation(
		"World rules of carom billiard, equipment",
		"Union Mondiale de Billard",
		null,
		"read",
	),
	"shepard-1997": citation(
		"Amateur Physics for the Amateur Pool Player, 3rd ed.",
		"R. Shepard",
		1997,
		"read",
	),
	"shepard-2001": citation(
		"Everything you always wanted to know about cue ball squirt, but were afraid to ask",
		"R. Shepard",
		2001,
		"read",
	),
	"alciatore-a30": citation(
		"Technical proof TP A.30: cue tip offset, cue weight and tip efficiency",
		"D. Alciatore",
		null,
		"read",
	),
	"alciatore-a31": citation(
		"Technical proof TP A.31: cue-ball squirt and effective end mass",
		"D. Alciatore",
		2008,
		"read",
	),
	"alciatore-b1": citation(
		"Technical proof TP B.1: squirt and pivot length measurements",
		"D. Alciatore",
		null,
		"read",
	),
	"alciatore-b22": citation(
		"Technical proof TP B.22: tip contact force and patch",
		"D. Alciatore",
		null,
		"read",
	),
	"alciatore-2-1": citation(
		"Technical proof TP 2.1: tip offset and friction",
		"D. Alciatore",
		null,
		"read",
	),
	"kim-2022": citation(
		"Motions of a billiard ball after a cue stroke, New Phys. 72:208",
		"Korean Physical Society",
		2022,
		"read",
	),
	"de-leva-1996": citation(
		"Adjusted body segment parameters, J Biomech 29:1223–1230",
		"Elsevier",
		1996,
		"read",
	),
	"cross-bower-2006": citation(
		"Effects of swing-weight on swing speed, J Sports Sci 24:23",
		"Taylor & Francis",
		2006,
		"read",
	),
	"metal-data-sheets": citation(
		"Manufacturer-neutral alloy data sheets (CW614N, C36000, 303, 6061-T6)",
		"—",
		null,
		"read",
	),
	"plastics-handbook-2006": citation(
		"Handbook of Plastics Technologies, table 3.9",
		"McGraw-Hill",
		2006,
		"read",
	),
	"cites-appendices": citation(
		"CITES Appendices and annotations, text in force from 23 February 2023, as quoted in secondary notes; not checked on the convention's own site",
		"CITES",
		2023,
		"secondary",
	),
	"dust-chart-1990": citation(
		"Chart of woods and their reported effects on skin, eyes and lungs",
		"—",
		1990,
		"secondary",
	),
	"govorcin-2010": citation(
		"Properties of olive wood (Olea europaea), abstract",
		"—",
		2010,
		"read",
	),
	"hornbeam-page": citation(
		"Public wood database, page on European hornbeam",
		"—",
		null,
		"read",
	),
	"tungsten-alloy-b777": citation(
		"ASTM B777-15, tungsten heavy alloy, table 1",
		"ASTM International",
		2015,
		"read",
	),
	"derringer-suich-1980": citation(
		"Simultaneous optimization of several response variables, J. Qual. Technol. 12 (1980) 214",
		"American Society for Quality",
		1980,
		"secondary",
	),
	"brown-cai-dasgupta-2001": citation(
		"Interval estimation for a binomial proportion, Statist. Sci. 16:101–133",
		"Institute of Mathematical Statistics",
		2001,
		"memory",
	),
	"hoff-2009": citation(
		"A First Course in Bayesian Statistical Methods (a normal population, mean and spread unknown)",
		"Springer",
		2009,
		"secondary",
	),
	"fisher-1935": citation(
		"The Design of Experiments (exact test of a two-by-two table)",
		"Oliver & Boyd",
		1935,
		"memory",
	),
	"mcnemar-1947": citation(
		"Sampling error of the difference between correlated proportions, Psychometrika 12:153–157 (used in its exact form)",
		"Psychometric Society",
		1947,
		"memory",
	),
	"holm-1979": citation(
		"A simple sequentially rejective multiple test procedure, Scand. J. Statist. 6:65–70",
		"Wiley",
		1979,
		"memory",
	),
	"williams-1949": citation(
		"Designs balanced for the estimation of residual effects of treatments, Aust. J. Sci. Res. A 2:149–168",
		"CSIRO",
		1949,
		"memory",
	),
	"connor-1987": citation(
		"Sample size for testing differences in proportions for the paired-sample design, Biometrics 43:207–211",
		"International Biometric Society",
		1987,
		"memory",
	),
	"fleiss-2003": citation(
		"Statistical Methods for Rates and Proportions, 3rd ed.",
		"Wiley",
		2003,
		"memory",
	),
	"lindley-1956": citation(
		"On a measure of the information provided by an experiment, Ann. Math. Statist. 27:986–1005",
		"Institute of Mathematical Statistics",
		1956,
		"memory",
	),
	"frazier-2009": citation(
		"Frazier, Powell & Dayanik: the knowledge-gradient policy for correlated normal beliefs, INFORMS J. Comput. 21:599–613",
		"INFORMS",
		2009,
		"memory",
	),
} as const satisfies Record<string, Citation>;

export type CitationId = keyof typeof CITATIONS;
