//! Blocks as Markdown, for a place that has a document made of it.

use super::document::{Block, Lead, Row, Table};

/// A document with a title. A figure is told in words: the drawing is a file of its own.
pub(super) fn page(title: &str, blocks: &[Block]) -> String {
    let mut text = format!("# {}\n", escaped(title));
    let mut was = "";
    for block in blocks {
        let (kind, part) = match block {
            Block::Heading(title) => ("heading", format!("## {}", escaped(title))),
            Block::Paragraph { lead, text } => {
                let text = escaped(text);
                match Lead::of(lead) {
                    Lead::None => ("paragraph", text),
                    Lead::Bullet => ("list", format!("- {text}")),
                    Lead::Term(word) => ("term", format!("**{}:** {text}", escaped(word))),
                    Lead::More => ("more", text),
                    Lead::Note => ("note", format!("> {text}")),
                }
            }
            Block::Line(line) => ("line", format!("    {line}")),
            Block::Table(table) => ("table", self::table(table)),
            Block::Figure(figure) => {
                ("figure", format!("*Figure: {}.* {}", escaped(&figure.title), escaped(&figure.words)))
            }
            Block::Gap => continue,
        };
        // Lines of one list stand together, and so do those of one listing.
        let together = kind == was && matches!(kind, "list" | "line");
        text.push_str(if together { "" } else { "\n" });
        text.push_str(&part);
        text.push('\n');
        was = kind;
    }
    text
}

fn table(table: &Table) -> String {
    let row = |cells: Vec<String>| format!("| {} |", cells.join(" | "));
    let cell = |cell: &String| escaped(cell.trim());
    let noted = table.rows.iter().any(|row| !row.notes.is_empty());
    let last = |notes: String| noted.then_some(notes);
    let mut lines = vec![row(table.head.iter().map(cell).chain(last("rests on".to_owned())).collect())];
    let columns = table.head.len() + usize::from(noted);
    lines.push(row(vec!["---".to_owned(); columns]));
    lines.extend(table.rows.iter().map(|Row { cells, notes, .. }| {
        let notes = notes.iter().map(|note| escaped(note)).collect::<Vec<_>>().join("; ");
        row(cells.iter().map(cell).chain(last(notes)).collect())
    }));
    lines.join("\n")
}

/// Text that means nothing to Markdown.
fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        if matches!(c, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#') {
            escaped.push('\\');
        }
        escaped.push(if c == '\n' { ' ' } else { c });
    }
    escaped
}
