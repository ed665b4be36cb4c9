"""The paint box of the example pictures: shapes, a surface to compose on, and a brush that turns it into a painting."""
