import { resolve } from "node:path";
import { type Node, SyntaxKind } from "typescript/unstable/ast";
import { API } from "typescript/unstable/sync";

/** A literal of the source that reads like something a person is shown. */
export interface Literal {
	/** From the project's root. */
	readonly file: string;
	readonly line: number;
	readonly text: string;
}

/** Attributes whose text no person reads. */
const UNREAD_ATTRIBUTES = new Set([
	"aria-describedby",
	"aria-labelledby",
	"autoComplete",
	"className",
	"d",
	"href",
	"htmlFor",
	"id",
	"inputMode",
	"key",
	"lang",
	"media",
	"name",
	"preserveAspectRatio",
	"rel",
	"role",
	"style",
	"target",
	"textAnchor",
	"transform",
	"type",
	"viewBox",
]);

/** Two words with a space between: the least a sentence has. */
const SENTENCE = /\p{L}{2,}[,.:;!?’”)]* [(“„]*\p{L}{2,}/u;
/** A word beside what is put in: "cue {length}", "{count} shots". */
const BESIDE = /(^|[\s“(])\p{L}{3,}[\s,:;.]|[\s]\p{L}{3,}([\s,.:;”)]|$)/u;
/** A label of one word, as a button or a column has it. */
const LABEL = /^\p{Lu}\p{Ll}{2,}[….:?!]?$/u;

interface Parts {
	readonly text?: string;
	readonly literal?: { readonly text: string };
	readonly head?: { readonly text: string };
	readonly templateSpans?: readonly { readonly literal: { text: string } }[];
	readonly expression?: Node & { readonly text?: string };
	readonly name?: Node & { readonly text?: string };
	readonly initializer?: Node;
}
const partsOf = (node: Node) => node as unknown as Parts;

/** What is written for who works on the code: thrown errors, names of modules, types, keys. */
function isUnread(node: Node): boolean {
	const { expression, name } = partsOf(node);
	switch (node.kind) {
		case SyntaxKind.ImportDeclaration:
		case SyntaxKind.ExportDeclaration:
		case SyntaxKind.LiteralType:
		case SyntaxKind.ThrowStatement:
			return true;
		case SyntaxKind.NewExpression:
			return /Error$/.test(expression?.text ?? "");
		case SyntaxKind.ExpressionStatement:
			return expression?.kind === SyntaxKind.StringLiteral;
		case SyntaxKind.JsxAttribute: {
			const attribute = name?.text ?? "";
			return UNREAD_ATTRIBUTES.has(attribute) || attribute.startsWith("data-");
		}
		default:
			return false;
	}
}

/** The literal's text where it reads like a sentence or a label. */
function shownText(node: Node): string | null {
	const { text = "", head, templateSpans = [] } = partsOf(node);
	switch (node.kind) {
		case SyntaxKind.JsxText:
			return /\p{L}{2,}/u.test(text) ? text.trim() : null;
		case SyntaxKind.StringLiteral:
		case SyntaxKind.NoSubstitutionTemplateLiteral:
			return SENTENCE.test(text) || LABEL.test(text) ? text : null;
		case SyntaxKind.TemplateExpression: {
			const pieces = [
				head?.text ?? "",
				...templateSpans.map(({ literal }) => literal.text),
			];
			// A key of a message has no space in it.
			return pieces.some((one) => SENTENCE.test(one) || BESIDE.test(one)) &&
				/\s/.test(pieces.join(""))
				? pieces.join("{}")
				: null;
		}
		default:
			return null;
	}
}

/** The literals of one file that read like something shown. */
export function literalsIn(
	root: Node,
	file: string,
	source: string,
): Literal[] {
	const found: Literal[] = [];
	const visit = (node: Node): void => {
		if (isUnread(node)) return;
		const text = shownText(node);
		if (text !== null)
			found.push({
				file,
				line: source.slice(0, node.end).split("\n").length,
				text: text.replace(/\s+/g, " "),
			});
		node.forEachChild((child) => {
			// A key is no text: { "butt-wood": … }.
			const isKey =
				node.kind === SyntaxKind.PropertyAssignment &&
				child === partsOf(node).name;
			if (!isKey) visit(child);
		});
	};
	visit(root);
	return found;
}

/** Runs over the files of the project whose path passes, from its root. */
export function literalsOf(passes: (file: string) => boolean): {
	readonly files: readonly string[];
	readonly literals: readonly Literal[];
} {
	const root = `${resolve(".")}/`;
	const api = new API({ cwd: root });
	try {
		const [project] = api
			.updateSnapshot({ openProjects: [`${root}tsconfig.json`] })
			.getProjects();
		if (project === undefined) throw new Error("no project was opened");
		const files = project.program
			.getSourceFileNames()
			.filter((name) => name.startsWith(root))
			.map((name) => name.slice(root.length))
			.filter(passes);
		return {
			files,
			literals: files.flatMap((file) => {
				const source = project.program.getSourceFile(root + file);
				if (source === undefined) throw new Error(`${file} was not parsed`);
				return literalsIn(source, file, source.text);
			}),
		};
	} finally {
		api.close();
	}
}
