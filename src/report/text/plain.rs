//! Blocks as text for a terminal or a file of 100 columns.

use crate::report::document::Block;
use textwrap::{Options, fill};

pub(super) const WIDTH: usize = 100;

/// All of them.
pub(super) fn text(blocks: &[Block]) -> String {
    let mut text = Text::default();
    for block in blocks {
        match block {
            Block::Heading(title) => {
                text.line("");
                text.wrapped("", title);
                text.line(&"-".repeat(title.chars().count().min(WIDTH)));
            }
            Block::Paragraph { lead, text: words } => text.wrapped(lead, words),
            Block::Line(line) => text.line(line),
            Block::Table(table) => {
                text.line(&table.short_head);
                for row in &table.rows {
                    text.line(&(table.layout)(&row.cells));
                    for note in &row.notes {
                        text.wrapped("    ", note);
                    }
                }
            }
            Block::Gap => text.line(""),
            Block::Figure(_) => {}
        }
    }
    text.0
}

#[derive(Default)]
struct Text(String);

impl Text {
    fn line(&mut self, line: &str) {
        self.0.push_str(line.trim_end());
        self.0.push('\n');
    }

    /// `first` at the start, the rest under its end.
    fn wrapped(&mut self, first: &str, text: &str) {
        // A text of one short line, which no word can make wider than its bytes, needs no looking for where to break it.
        if first.len() + text.len() <= WIDTH && !text.is_empty() && !text.contains('\n') {
            return self.line(&format!("{first}{text}"));
        }
        let rest = " ".repeat(first.chars().count());
        let options = Options::new(WIDTH).initial_indent(first).subsequent_indent(&rest);
        for line in fill(text, options).lines() {
            self.line(line);
        }
    }
}
