//! Reads the Fluent files of one language with Fluent's own parser.

use std::collections::BTreeMap;

use fluent_syntax::ast::{
    Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey,
};
use fluent_syntax::unicode::unescape_unicode_to_string;

use crate::message::{File, Kind, Message, Piece};

/// The plural categories of CLDR.
const CATEGORIES: [&str; 6] = ["zero", "one", "two", "few", "many", "other"];
/// The most decimals that a number can be asked for.
const MOST_DECIMALS: u8 = 9;

type Terms<'a> = BTreeMap<&'a str, &'a Pattern<&'a str>>;

/// Reads all files of a language; terms of one file hold in all.
pub fn language(sources: &BTreeMap<String, String>) -> Result<BTreeMap<String, File>, String> {
    let mut parsed = Vec::new();
    for (name, text) in sources {
        let resource = fluent_syntax::parser::parse(text.as_str()).map_err(|(_, errors)| {
            let error = errors.first().map(ToString::to_string).unwrap_or_default();
            let at = errors.first().map_or(0, |error| error.pos.start);
            let line = text.get(..at).unwrap_or_default().lines().count().max(1);
            format!("{name}.ftl, line {line}: {error}")
        })?;
        parsed.push((name, resource));
    }
    let mut terms = Terms::new();
    for (_, resource) in &parsed {
        for entry in &resource.body {
            if let Entry::Term(term) = entry {
                terms.insert(term.id.name, &term.value);
            }
        }
    }
    let mut files = BTreeMap::new();
    for (name, resource) in &parsed {
        let mut file = File::new();
        for entry in &resource.body {
            let Entry::Message(message) = entry else {
                continue;
            };
            let id = message.id.name;
            let failed = |why: String| format!("{name}.ftl: `{id}` {why}");
            if !message.attributes.is_empty() {
                return Err(failed(
                    "has attributes, which nothing here reads".to_owned(),
                ));
            }
            let value = message
                .value
                .as_ref()
                .ok_or_else(|| failed("has no text".to_owned()))?;
            let mut reader = Reader {
                terms: &terms,
                arguments: BTreeMap::new(),
                depth: 0,
            };
            let pattern = reader.pattern(value).map_err(failed)?;
            if file.iter().any(|known| known.id == id) {
                return Err(failed("stands there twice".to_owned()));
            }
            file.push(Message {
                id: id.to_owned(),
                arguments: reader.arguments.into_iter().collect(),
                pattern,
            });
        }
        file.sort_by(|a, b| a.id.cmp(&b.id));
        files.insert((*name).clone(), file);
    }
    Ok(files)
}

struct Reader<'a> {
    terms: &'a Terms<'a>,
    arguments: BTreeMap<String, Kind>,
    depth: usize,
}

impl<'a> Reader<'a> {
    fn pattern(&mut self, pattern: &Pattern<&'a str>) -> Result<Vec<Piece>, String> {
        let mut pieces = Vec::new();
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => text(&mut pieces, value),
                PatternElement::Placeable { expression } => {
                    self.expression(&mut pieces, expression)?;
                }
            }
        }
        Ok(pieces)
    }

    fn expression(
        &mut self,
        pieces: &mut Vec<Piece>,
        expression: &Expression<&'a str>,
    ) -> Result<(), String> {
        match expression {
            Expression::Inline(inline) => self.inline(pieces, inline),
            Expression::Select { selector, variants } => {
                let keys: Vec<&str> = variants
                    .iter()
                    .map(|variant| match &variant.key {
                        VariantKey::Identifier { name } => *name,
                        VariantKey::NumberLiteral { value } => *value,
                    })
                    .collect();
                let of_number = keys
                    .iter()
                    .all(|key| CATEGORIES.contains(key) || key.parse::<f64>().is_ok());
                let by = match selector {
                    InlineExpression::VariableReference { id } => id.name,
                    _ => return Err("chooses by something other than an argument".to_owned()),
                };
                let default = variants
                    .iter()
                    .position(|variant| variant.default)
                    .ok_or("has a choice without a default")?;
                if of_number && keys.get(default) != Some(&"other") {
                    return Err(format!(
                        "chooses by the number `${by}` and its default is not `other`"
                    ));
                }
                self.argument(by, if of_number { Kind::Number } else { Kind::Text });
                let mut read = Vec::new();
                for (key, variant) in keys.iter().zip(variants) {
                    read.push(((*key).to_owned(), self.pattern(&variant.value)?));
                }
                pieces.push(Piece::Select {
                    by: by.to_owned(),
                    variants: read,
                    default,
                });
                Ok(())
            }
        }
    }

    fn inline(
        &mut self,
        pieces: &mut Vec<Piece>,
        inline: &InlineExpression<&'a str>,
    ) -> Result<(), String> {
        match inline {
            InlineExpression::StringLiteral { value } => {
                text(pieces, &unescape_unicode_to_string(value));
            }
            InlineExpression::NumberLiteral { value } => text(pieces, value),
            InlineExpression::VariableReference { id } => {
                self.argument(id.name, Kind::Text);
                pieces.push(Piece::Argument(id.name.to_owned()));
            }
            InlineExpression::TermReference { id, .. } => {
                let term = self
                    .terms
                    .get(id.name)
                    .ok_or_else(|| format!("names the term `-{}`, which is not there", id.name))?;
                self.depth += 1;
                if self.depth > 8 {
                    return Err(format!("goes round in circles at `-{}`", id.name));
                }
                pieces.extend(self.pattern(term)?);
                self.depth -= 1;
            }
            InlineExpression::FunctionReference { id, arguments } if id.name == "NUMBER" => {
                let Some(InlineExpression::VariableReference { id }) = arguments.positional.first()
                else {
                    return Err("asks NUMBER of something other than an argument".to_owned());
                };
                let decimals = |name: &str| {
                    arguments
                        .named
                        .iter()
                        .find(|argument| argument.name.name == name)
                        .and_then(|argument| match argument.value {
                            InlineExpression::NumberLiteral { value } => value.parse::<u8>().ok(),
                            _ => None,
                        })
                        .map(|decimals| decimals.min(MOST_DECIMALS))
                };
                let least = decimals("minimumFractionDigits").unwrap_or(0);
                let most = decimals("maximumFractionDigits").unwrap_or(3).max(least);
                self.argument(id.name, Kind::Number);
                pieces.push(Piece::Number(id.name.to_owned(), least, most));
            }
            InlineExpression::Placeable { expression } => self.expression(pieces, expression)?,
            InlineExpression::MessageReference { id, .. } => {
                return Err(format!("names the message `{}`; use a term", id.name));
            }
            InlineExpression::FunctionReference { id, .. } => {
                return Err(format!("asks the function {}, which is not there", id.name));
            }
        }
        Ok(())
    }

    /// An argument is a number where any place takes it for one.
    fn argument(&mut self, name: &str, kind: Kind) {
        let known = self.arguments.entry(name.to_owned()).or_insert(kind);
        if kind == Kind::Number {
            *known = kind;
        }
    }
}

fn text(pieces: &mut Vec<Piece>, value: &str) {
    if let Some(Piece::Text(last)) = pieces.last_mut() {
        last.push_str(value);
    } else {
        pieces.push(Piece::Text(value.to_owned()));
    }
}
