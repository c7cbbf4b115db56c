"""Pictures of plants, made at build time from the botanical traits of their records."""
